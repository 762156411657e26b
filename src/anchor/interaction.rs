//! Tension and shear together (17.8).

/// Tension and shear at once, each as demand over design strength in its governing mode.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Interaction {
    /// `N_ua` / `φN_n`.
    pub tension: f64,
    /// `V_ua` / `φV_n`.
    pub shear: f64,
}

impl Interaction {
    /// How far the limit of 17.8.2 and 17.8.3 is used, 1 at the limit: where either ratio is at
    /// most 0.2, the other alone counts; else their sum may be 1.2.
    ///
    /// ```
    /// use sillmark::anchor::Interaction;
    /// assert!((Interaction { tension: 0.6, shear: 0.6 }.utilisation() - 1.0).abs() < 1e-12);
    /// assert_eq!(Interaction { tension: 0.9, shear: 0.2 }.utilisation(), 0.9);
    /// ```
    #[must_use]
    pub fn utilisation(&self) -> f64 {
        let alone = self.tension.max(self.shear);
        if self.tension <= 0.2 || self.shear <= 0.2 {
            return alone;
        }
        alone.max((self.tension + self.shear) / 1.2)
    }

    /// The sum of the ratios to the power of 5/3, which may be 1 (commentary R17.8): the other
    /// way, usually the more favourable one.
    ///
    /// ```
    /// use sillmark::anchor::Interaction;
    /// assert!(Interaction { tension: 0.6, shear: 0.6 }.power_sum() < 1.0);
    /// ```
    #[must_use]
    pub fn power_sum(&self) -> f64 {
        let power = 5.0 / 3.0;
        self.tension.powf(power) + self.shear.powf(power)
    }
}

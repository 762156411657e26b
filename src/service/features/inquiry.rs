//! One question put to a service, in as many requests as it takes.

use std::sync::{Mutex, PoisonError};
use std::time::SystemTime;

use reqwest::Url;

use super::own_parameters::OwnParameters;
use crate::service::connection::Unread;
use crate::service::secret::shown;
use crate::service::{Address, Connection, Entry, Limits, Request, ServiceError, Validators};

/// Asks with the user's own parameters, and notes how old the answers are and what is odd.
pub(super) struct Inquiry<'run> {
    connection: &'run Connection,
    pub(super) own: OwnParameters,
    noted: Mutex<Noted>,
}

#[derive(Default)]
struct Noted {
    oldest: Option<SystemTime>,
    remarks: Vec<String>,
}

/// What an answer says, and what stands around it.
pub(super) struct Told<T> {
    pub(super) value: T,
    /// What its relative links are relative to.
    pub(super) base: Url,
    /// Its coordinate reference system, as the server says.
    pub(super) content_crs: Option<String>,
    date: String,
}

/// What is sent.
pub(super) struct Question {
    pub(super) url: Url,
    pub(super) form: Option<Vec<(String, String)>>,
    pub(super) accept: &'static str,
}

impl<'run> Inquiry<'run> {
    pub(super) fn new(connection: &'run Connection, address: &Address) -> Self {
        let own = OwnParameters::of(address.url());
        let inquiry = Self {
            connection,
            own,
            noted: Mutex::default(),
        };
        for name in inquiry.own.left_out().filter(|name| *name != "crs") {
            inquiry.remark(format!(
                "the parameter {name:?} of the address is not used: what is asked for follows \
                 from the places, and comes whole"
            ));
        }
        inquiry
    }

    pub(super) const fn limits(&self) -> &Limits {
        self.connection.limits()
    }

    /// Asks, and reads the answer.
    pub(super) async fn ask<T>(
        &self,
        question: Question,
        read: impl Fn(&Entry) -> Result<T, Unread>,
    ) -> Result<Told<T>, ServiceError> {
        let mut url = question.url;
        self.own.add_to(&mut url);
        let request = Request {
            url,
            form: question.form,
            accept: question.accept,
            known: Validators::default(),
        };
        let told = self
            .connection
            .read(&request, |entry| {
                Ok(Told {
                    value: read(entry)?,
                    base: Url::parse(&entry.address).unwrap_or_else(|_| request.url.clone()),
                    content_crs: entry.content_crs.clone(),
                    date: entry.date.clone(),
                })
            })
            .await?;
        if let Ok(date) = httpdate::parse_http_date(&told.date) {
            self.note(|noted| {
                noted.oldest = Some(noted.oldest.map_or(date, |oldest| oldest.min(date)));
            });
        }
        Ok(told)
    }

    /// Notes something odd, once.
    pub(super) fn remark(&self, remark: String) {
        self.note(|noted| {
            if !noted.remarks.contains(&remark) {
                noted.remarks.push(remark);
            }
        });
    }

    /// The date of the oldest answer, and the remarks.
    pub(super) fn ended(self) -> (String, Vec<String>) {
        let noted = self
            .noted
            .into_inner()
            .unwrap_or_else(PoisonError::into_inner);
        let oldest = noted.oldest.unwrap_or_else(SystemTime::now);
        (httpdate::fmt_http_date(oldest), noted.remarks)
    }

    fn note(&self, change: impl FnOnce(&mut Noted)) {
        change(&mut self.noted.lock().unwrap_or_else(PoisonError::into_inner));
    }
}

/// An answer that is not what it should be.
pub(super) fn unfit(url: &Url, problem: impl Into<String>) -> ServiceError {
    ServiceError::Unfit {
        address: shown(url),
        problem: problem.into(),
    }
}

/// Whether an error says that a service does not serve something, so that another way may do;
/// without the network, what was refused then is not there now.
pub(super) const fn is_not_served(error: &ServiceError) -> bool {
    matches!(
        error,
        ServiceError::Refused { .. }
            | ServiceError::Unfit { .. }
            | ServiceError::NotKept { .. }
            | ServiceError::Busy { .. }
    )
}

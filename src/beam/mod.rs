//! Bending of one straight member: reactions, moments, shears and deflections.

//! The refill test: marks, fit, verdict.

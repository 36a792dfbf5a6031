//! The trace: from readings to a proven cause.

//! Reading and showing, tried together.

mod reading;
mod round_trip;
mod showing;
mod thumb;

//! How we know a figure of head pressure, in English.

use crate::physics::basis::HeadFigure;

pub(in crate::words) fn name(figure: HeadFigure) -> &'static str {
    match figure {
        HeadFigure::Expected => "Head to expect",
        HeadFigure::AtFlow => "Head, with that flow",
    }
}

pub(in crate::words) fn formula(figure: HeadFigure) -> &'static str {
    match figure {
        HeadFigure::Expected => {
            "Head = pressure at which the mean of bubble and dew temperature is T, less the local \
             atmosphere. T = water leaving the condenser + normal approach."
        }
        HeadFigure::AtFlow => {
            "Head = pressure at which the mean of bubble and dew temperature is Tc, less the local \
             atmosphere. Tc: condensing temperature with that flow."
        }
    }
}

pub(in crate::words) fn source(figure: HeadFigure) -> &'static str {
    match figure {
        HeadFigure::Expected => {
            "Source: fitted to CoolProp 8.0.0, an open library; the approach is yours, from a day \
             the condenser was clean. Good from 32\u{a0}F to 154-158\u{a0}F condensing, within 0.1% of \
             pressure; a wrong approach of 1\u{a0}F moves it 1 to 2%."
        }
        HeadFigure::AtFlow => {
            "Source: fitted to CoolProp 8.0.0, an open library, at the condensing temperature beside \
             it. Good to 30% of the rise over usual head; under a third of the flow worse."
        }
    }
}

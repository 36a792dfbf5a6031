//! How we know a figure of head pressure, in English.

use crate::physics::basis::HeadFigure;

pub(in crate::words) fn name(figure: HeadFigure) -> &'static str {
    match figure {
        HeadFigure::Expected => "Head to expect",
        HeadFigure::AtFlow => "Head, with that flow",
        HeadFigure::EnteringWaterAtTrip => "Trips with water entering at",
        HeadFigure::LeavingWaterAtTrip => "Trips with water leaving at",
    }
}

pub(in crate::words) fn formula(figure: HeadFigure) -> &'static str {
    match figure {
        HeadFigure::Expected => {
            "Head = pressure at which the mean of bubble and dew temperature is T, less the local \
             atmosphere. T = water leaving the condenser + normal approach."
        }
        HeadFigure::AtFlow => {
            "Head = bubble pressure at Tc, less the local atmosphere. Tc: condensing temperature with \
             that flow."
        }
        HeadFigure::EnteringWaterAtTrip => {
            "Entering water at trip = entering water now + (condensing at the cut-out - condensing \
             now). Range and approach stay as they are."
        }
        HeadFigure::LeavingWaterAtTrip => {
            "Leaving water at trip = condensing at the cut-out - approach. Approach: condensing \
             temperature over water leaving the condenser."
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
        HeadFigure::EnteringWaterAtTrip | HeadFigure::LeavingWaterAtTrip => {
            "Source: definition, with heat and water flow unchanged (common practice, no source). \
             Good to 2 or 3\u{a0}F: as head rises the compressor adds heat. The machine's nameplate \
             governs."
        }
    }
}

//! What a refill test found, in English.

use uom::si::ratio::ratio;

use super::refill::missing;
use crate::quantity::Length;
use crate::refill::{Cover, Estimate, Finding, FlowRange, LevelEstimate};
use crate::words::refill::Format;

pub(in crate::words) fn finding(finding: &Finding, format: &Format<'_>) -> String {
    use Finding::*;
    let level = |l: Length| (format.level)(l);
    let minutes = |s: f64| (format.minutes)(s / 60.0);
    match finding {
        NothingYet => "Nothing noted yet.".into(),
        CalledByItself { level: Some(at) } => {
            format!("The control called by itself, {}.", below(at, format))
        }
        CalledByItself { level: None } => "The control called by itself.".into(),
        CallNotNoted => "Water ran, but nobody saw the control call.".into(),
        WaterBeforeCall { lead_s } => {
            format!("Water ran {} before the control called.", minutes(*lead_s))
        }
        WaterFromTheStart => {
            "Water ran before the basin was drawn down, so this shows no call.".into()
        }
        NeverCalled { lowest } => {
            format!(
                "Drawn down to {} below the overflow and no call for water.",
                level(*lowest)
            )
        }
        NotDownToCall {
            lowest: Some(lowest),
        } => format!(
            "No call yet. Lowest reading {} below the overflow does not settle it.",
            level(*lowest)
        ),
        NotDownToCall { lowest: None } => "No call yet, and no level read.".into(),
        CallLevelOff { set, found } => format!(
            "It called {}; it is set to call at {}.",
            below(found, format),
            level(*set)
        ),
        WaterCame { after: Ok(after_s) } if *after_s > 0.0 => {
            format!("Water came {} after the call.", minutes(*after_s))
        }
        WaterCame { .. } => "Water came.".into(),
        WaterLate { after_s } => format!("Water was slow: {} after the call.", minutes(*after_s)),
        CalledNoWater { waited_s } => {
            format!("It called and no water came in {}.", minutes(*waited_s))
        }
        WaterNotYet { waited_s } => {
            format!("It calls; no water yet after {}.", minutes(*waited_s))
        }
        WaterByReadings => {
            "Nobody marked the water; the readings show the level turn and rise.".into()
        }
        FlowChanged { share, .. } => format!(
            "The flow changed while it filled: to {} of what it was before.",
            percent(share.get::<ratio>())
        ),
        FillBelowValve { gross, valve } => format!(
            "This valve passes {} at this mains pressure; the fill gives {}. Look at strainer, \
             hand valves and pressure.",
            range(valve, format),
            flow(gross, format)
        ),
        FillBelowEarlier { gross, earlier } => format!(
            "Slower than in the earlier test here: {} now, {} then.",
            flow(gross, format),
            range(earlier, format)
        ),
        FillAsEarlier { earlier } => format!(
            "No slower than the earlier test here, which gave {}.",
            range(earlier, format)
        ),
        ShutOffByReadings { level: at } => match at {
            Some(at) => format!(
                "Nobody marked the stop; the readings hold {}.",
                below(at, format)
            ),
            None => "Nobody marked the stop; the readings show that the level held.".into(),
        },
        ShutOffMarkOff { by_s } => format!(
            "The stop was marked {} {} than the readings show it.",
            minutes(by_s.abs()),
            if *by_s > 0.0 { "later" } else { "earlier" }
        ),
        StoppedShort { set, found } => format!(
            "It stopped {}, far short of the {} it is set to: something told it full too early.",
            below(found, format),
            level(*set)
        ),
        CalledLate { set, found } => format!(
            "It called {}, far below the {} it is set to.",
            below(found, format),
            level(*set)
        ),
        Chatter {
            times: 1,
            soonest_s,
        } => format!(
            "The fill came back on {} after it stopped, with the drain shut.",
            minutes(*soonest_s)
        ),
        Chatter { times, soonest_s } => format!(
            "The fill came back on {times} times with the drain shut, once {} after it stopped.",
            minutes(*soonest_s)
        ),
        WaterNotNoted => "The basin filled, but running water was not noted.".into(),
        FillCovers(cover) => covers("The fill covers", cover, format),
        FillMarginal(cover) => covers("The fill just covers", cover, format),
        FillBelowNeed(cover) => format!(
            "The fill is too small: {}, at most {} of the {} needed.",
            flow(&cover.gross, format),
            percent(cover.ratio_high.get::<ratio>()),
            (format.flow)(cover.need)
        ),
        FillUncertain(cover) => format!(
            "Cannot tell whether the fill covers the {} needed: {}.",
            (format.flow)(cover.need),
            flow(&cover.gross, format)
        ),
        FillBelowDesign(cover) => format!(
            "On the design day it takes {}; the fill gives at most {} of that.",
            (format.flow)(cover.need),
            percent(cover.ratio_high.get::<ratio>())
        ),
        FillNearDesign(cover) => format!(
            "On the design day it takes {}; the fill gives between {} and {} of that.",
            (format.flow)(cover.need),
            percent(cover.ratio_low.get::<ratio>()),
            percent(cover.ratio_high.get::<ratio>())
        ),
        FillNotMeasured(reason) => format!("Fill not measured. {}", missing(*reason)),
        NeedNotKnown => "Today's makeup need is not known.".into(),
        DrainNotClosed => {
            "Closing the drain was not noted: the fill may be more than measured.".into()
        }
        ShutOffByItself { level: Some(at) } => {
            format!("The fill stopped by itself, {}.", below(at, format))
        }
        ShutOffByItself { level: None } => "The fill stopped by itself.".into(),
        NoShutOff { level: at } => format!(
            "The fill ran on past the stop level, up to {} below the overflow.",
            level(*at)
        ),
        ShutOffNotSeen => "The fill was not seen to stop by itself.".into(),
        StopLevelOff { set, found } => format!(
            "It stopped {}; it is set to stop at {}.",
            below(found, format),
            level(*set)
        ),
        PastOverflow { level: at } if *at < Length::default() => {
            format!("The basin overflowed: {} above the lip.", level(-*at))
        }
        PastOverflow { .. } => "The basin filled up to the overflow.".into(),
        FoundAtOverflow { .. } => "Before the test the basin stood at the overflow.".into(),
        FreeboardNotShown => "The readings do not show that it stopped below the overflow.".into(),
        AfterDrip { flow: drip } => {
            format!(
                "Water still came in after the fill stopped: {}.",
                flow(drip, format)
            )
        }
        ValvePasses { flow: drip } => format!(
            "The fill valve does not shut: {} still came in after it stopped, more than the plant \
             uses. The basin will run over.",
            flow(drip, format)
        ),
        Sag { flow: sag } => format!(
            "The level fell after the fill stopped, more than the losses explain: {}.",
            flow(sag, format)
        ),
        Held { most, told: true } => format!(
            "The level held after that: a leak of {} or more would have shown.",
            (format.flow)(*most)
        ),
        Held { most, told: false } => format!(
            "The level held as far as the readings tell; a leak of up to {} could hide in them.",
            (format.flow)(*most)
        ),
        DrawnSlowly { flow: out, drain } => format!(
            "It fell slower than through an open drain of this bore: {}, not {}. Was the drain \
             throttled or choked, or did water come in?",
            flow(out, format),
            range(drain, format)
        ),
        TightnessNotWatched => {
            "Nobody watched whether the level held after the fill stopped.".into()
        }
        LowLimitReached { lowest } => format!(
            "The level reached the pump inlet limit: {} below the overflow.",
            level(*lowest)
        ),
        ReadingsLeftOut { count: 1 } => "One reading was far off the others and left out.".into(),
        ReadingsLeftOut { count } => {
            format!("{count} readings were far off the others and left out.")
        }
        MarksLeftOut { count: 1 } => "One entry has no usable time or level.".into(),
        MarksLeftOut { count } => format!("{count} entries have no usable time or level."),
        OneCycleOnly => {
            "Seen once. A fault that comes and goes can still hide: run it again.".into()
        }
        Cycles { run, passed } => format!("{passed} of {run} fills passed."),
    }
}

fn flow(estimate: &Estimate, format: &Format<'_>) -> String {
    let show = format.flow;
    let (value, low, high) = (
        show(estimate.value),
        show(estimate.low),
        show(estimate.high),
    );
    format!("{value} (between {low} and {high})")
}

/// "9 in below the overflow, give or take 1/4 in".
fn below(at: &LevelEstimate, format: &Format<'_>) -> String {
    let half = (at.high - at.low) / 2.0;
    let (value, half) = ((format.level)(at.value), (format.level)(half));
    format!("{value} below the overflow, give or take {half}")
}

fn range(range: &FlowRange, format: &Format<'_>) -> String {
    let show = format.flow;
    format!("{} to {}", show(range.low), show(range.high))
}

fn percent(share: f64) -> String {
    format!("{:.0}%", share * 100.0)
}

fn covers(lead: &str, cover: &Cover, format: &Format<'_>) -> String {
    format!(
        "{lead} {} need of {}: {}, {}.",
        match cover.design {
            true => "the design day's",
            false => "today's",
        },
        (format.flow)(cover.need),
        flow(&cover.gross, format),
        at_least(cover.ratio_low.get::<ratio>())
    )
}

/// How much of the need, as one says it: a tiny need is met a hundred times over.
fn at_least(share: f64) -> String {
    match share {
        s if s >= 10.0 => "more than ten times that".into(),
        s if s >= 2.0 => format!("at least {s:.1} times that"),
        s => format!("at least {} of it", percent(s)),
    }
}

#[cfg(test)]
mod tests {
    use uom::si::length::inch;
    use uom::si::volume_rate::gallon_per_minute;

    use super::*;
    use crate::quantity::{Ratio, VolumeRate};
    use crate::words::Words;

    fn say(finding: Finding) -> String {
        let flow = |v: VolumeRate| format!("{:.1} gpm", v.get::<gallon_per_minute>());
        let level = |l: Length| format!("{:.2} in", l.get::<inch>());
        let minutes = |m: f64| format!("{m:.1} min");
        let format = Format {
            flow: &flow,
            level: &level,
            minutes: &minutes,
        };
        Words::default().refill_finding(&finding, &format)
    }

    #[test]
    fn findings_speak_in_the_given_units() {
        let gpm = VolumeRate::new::<gallon_per_minute>;
        let gross = Estimate {
            value: gpm(12.0),
            low: gpm(11.0),
            high: gpm(13.0),
        };
        let share = Ratio::new::<ratio>;
        let cover = Cover {
            gross,
            need: gpm(4.0),
            ratio: share(3.0),
            ratio_low: share(2.75),
            ratio_high: share(3.25),
            design: false,
        };
        assert_eq!(
            say(Finding::FillCovers(cover)),
            "The fill covers today's need of 4.0 gpm: 12.0 gpm (between 11.0 gpm and 13.0 gpm), \
             at least 2.8 times that."
        );
        assert_eq!(
            say(Finding::CalledNoWater { waited_s: 240.0 }),
            "It called and no water came in 4.0 min."
        );
        let over = Length::new::<inch>(-0.5);
        assert_eq!(
            say(Finding::PastOverflow { level: over }),
            "The basin overflowed: 0.50 in above the lip."
        );
    }
}

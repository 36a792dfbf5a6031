//! English: the control circuit, its faults, test points, meters and readings.

use crate::physics::circuit::{Caution, Fault, Meaning, Meter, Point};

pub(in crate::words) fn fault(fault: Fault) -> &'static str {
    match fault {
        Fault::None => "Nothing wrong",
        Fault::SupplyLost => "Supply dead",
        Fault::FuseBlown => "Fuse blown",
        Fault::DisconnectOpen => "Disconnect open",
        Fault::SeriesOpen(1) => "First series contact open",
        Fault::SeriesOpen(2) => "Second series contact open",
        Fault::SeriesOpen(_) => "Third series contact open",
        Fault::ContactStuckOpen => "Relay contact stuck open",
        Fault::ContactWelded => "Relay contact welded",
        Fault::ContactResistance(_) => "Relay contact burnt",
        Fault::CoilOpen => "Coil open",
        Fault::CoilShorted(_) => "Coil shorted",
        Fault::FeedBroken => "Feed wire broken",
        Fault::FeedFloating(_) => "Feed wire off at both ends",
        Fault::FeedLoose(_) => "Loose terminal in the feed",
        Fault::ReturnBroken => "Return wire broken",
        Fault::ReturnLoose(_) => "Loose terminal in the return",
        Fault::OutputLeakage(_) => "Solid-state output leaks",
    }
}

pub(in crate::words) fn fault_line(fault: Fault) -> &'static str {
    match fault {
        Fault::None => "Every part does its job.",
        Fault::SupplyLost => "Breaker tripped or transformer without primary. Nothing is fed.",
        Fault::FuseBlown => "Live up to the fuse, dead past it. Find out why before a new one.",
        Fault::DisconnectOpen => "Live up to the disconnect, dead past it. Ask who opened it.",
        Fault::SeriesOpen(_) => "A switch or interlock ahead of the relay holds the fill off.",
        Fault::ContactStuckOpen => "The control calls, and the contact doesn't make.",
        Fault::ContactWelded => "The coil stays fed with no call. The basin overflows.",
        Fault::ContactResistance(_) => {
            "Full volts with no load, too few with the coil on. It hums and doesn't open."
        }
        Fault::CoilOpen => "Full volts at the coil, and no current.",
        Fault::CoilShorted(_) => "Too much current for too little pull. It may take the fuse.",
        Fault::FeedBroken => "Live at the relay, dead at the coil.",
        Fault::FeedFloating(_) => {
            "A loose wire beside a live one. A plain meter shows volts that can do no work."
        }
        Fault::FeedLoose(_) => "Volts are lost between relay and coil once the coil draws.",
        Fault::ReturnBroken => "Both coil terminals are live to the return, with no volts across.",
        Fault::ReturnLoose(_) => "The coil's return side stands above the panel's return.",
        Fault::OutputLeakage(_) => {
            "Looks live when off, and can hold a small coil open. Load it and read again."
        }
    }
}

pub(in crate::words) fn point(point: Point) -> &'static str {
    match point {
        Point::SupplyHot => "Supply, hot side",
        Point::FuseOut => "Fuse, load side",
        Point::DisconnectOut => "Disconnect, load side",
        Point::Series1 => "First series contact, load side",
        Point::Series2 => "Second series contact, load side",
        Point::Series3 => "Third series contact, load side",
        Point::RelayCommon => "Level relay, COM",
        Point::RelayOut => "Level relay, terminal to the coil",
        Point::RelayOther => "Level relay, unused terminal",
        Point::CoilFeed => "Coil, feed side",
        Point::CoilReturn => "Coil, return side",
        Point::SupplyReturn => "Supply, return side",
    }
}

pub(in crate::words) fn meter(meter: Meter) -> &'static str {
    match meter {
        Meter::HighImpedance(_) => "Volts",
        Meter::LowImpedance(_) => "Volts, low impedance",
        Meter::Clamp => "Clamp amps",
        Meter::Ohmmeter => "Ohms, power off",
    }
}

pub(in crate::words) fn meaning(meaning: Meaning) -> &'static str {
    match meaning {
        Meaning::SamePoint => "Both leads are on the same metal.",
        Meaning::ClosedOrDead => {
            "Closed between the leads, or no power here at all: read each one to the return."
        }
        Meaning::OpenBetween => "Open between the leads, and the rest of the circuit is complete.",
        Meaning::DropBetween => {
            "Volts are lost between the leads: a bad contact under load, or two opens."
        }
        Meaning::LiveHere => "Live up to here. Move on toward the coil.",
        Meaning::DeadHere => "No volts here. The open is behind you, toward the supply.",
        Meaning::WeakHere => "Neither live nor dead: a drop ahead of here, or a ghost. Load it.",
        Meaning::CoilFed => "The coil is fed. If the valve stays shut, look at coil and valve.",
        Meaning::CoilLow => "Too few volts for the coil to pull in. Find where they are lost.",
        Meaning::CoilDead => "Nothing across the coil. Read each side to the return.",
        Meaning::CoilHigh => "More than the coil stands for long. Check the supply.",
        Meaning::NoCurrent => "No current: open somewhere, or not called.",
        Meaning::SmallCurrent => "Less than holding: leakage, or volts lost on the way.",
        Meaning::HoldingCurrent => "About the holding current: the coil is fed and seated.",
        Meaning::HighCurrent => {
            "Well above holding: the armature isn't seated, or turns are shorted."
        }
        Meaning::NoWayThrough => "No way through between the leads.",
        Meaning::ShortedThrough => "Next to no ohms between the leads.",
        Meaning::Winding => "About what this coil's winding should be.",
        Meaning::SomeOhms => "Some ohms. Compare with the maker's figure or a sound part.",
    }
}

pub(in crate::words) fn caution(caution: Caution) -> &'static str {
    match caution {
        Caution::LiveParts => {
            "Live parts. Qualified people only, in the protective gear your local code asks for. \
             If it can be done dead, lock out and do it dead."
        }
        Caution::LiveDeadLive => {
            "Believe \"dead\" only after live-dead-live: prove the tester on a known live source, \
             test here, prove it again."
        }
        Caution::ProveDead => {
            "Ohms only on a dead circuit: lock out, prove dead, then connect. The supply side of \
             the disconnect stays live."
        }
        Caution::LoadsCircuit => {
            "Low impedance draws current. It can trip a ground-fault device or move an electronic \
             input. Read only as long as needed."
        }
        Caution::ClampNearLive => {
            "Opening the panel to reach one conductor brings you near live parts. Same rules as \
             for leads."
        }
        Caution::CoilOffStem => {
            "Never energize a coil off its stem. It draws inrush for good and burns in minutes."
        }
        Caution::LiftLead => {
            "Lift or refit a lead only with the circuit locked out and proven dead. Insulate the end."
        }
    }
}

//! English: checks. Each has a title, what to do, and what healthy reads.

use crate::trace::Check;

/// Title, what to do, what healthy reads.
type Card = (&'static str, &'static str, &'static str);

pub(crate) fn title(check: Check) -> &'static str {
    card(check).0
}

pub(crate) fn how(check: Check) -> &'static str {
    card(check).1
}

pub(crate) fn healthy(check: Check) -> &'static str {
    card(check).2
}

#[rustfmt::skip]
fn card(check: Check) -> Card {
    use Check as K;
    match check {
        K::MachinesOut => ("How many machines are out", "Count the machines out on high head. Don't reset yet.", "No machine out; one alone points at that machine."),
        K::EnteringWater => ("Water to the machines", "Read the water entering the machines and compare with its usual.", "Within a few degrees of its usual in this weather."),
        K::RangeWidth => ("Range", "Read water off the machines less water to them, machines running.", "Near the design range, less at part load."),
        K::MachineOwn => ("The tripped machine itself", "On this machine: water in and out, regulating valve, head against water leaving.", "Head follows the leaving water as on its neighbors."),
        K::MachineRange => ("This machine's range", "Read its water in and out, and a neighbor's at the same load.", "About the same as its neighbor's."),
        K::CondenserOverWater => ("Condensing over leaving water", "Turn head into condensing temperature; take off this machine's leaving water.", "Near what it was when clean, some 10\u{a0}F."),
        K::BranchValves => ("This machine's hand valves", "Look at both of its water valves. Turn each one to see.", "Both open, handles in line with the pipe."),
        K::BranchStrainer => ("This machine's strainer", "Blow it off to a bucket or open it.", "Clean water at once, a clean screen."),
        K::RegulatingByHand => ("Regulating valve by hand", "Flush it open with a screwdriver under the spring and watch the head.", "Head hardly moves: the valve was open enough."),
        K::RegulatingTravel => ("Regulating valve through its travel", "Turn its adjustment slowly both ways, then back. Watch the water follow.", "Water follows smoothly, no jerk, no stop."),
        K::MachineLoad => ("What this machine carries", "Look at product, doors and air on; compare with its nameplate.", "At or below its nameplate."),
        K::TripHour => ("The hour it tripped", "From the log and whoever was there: weather, machines on, doors open, product in.", "At or below the nameplate wet bulb and load."),
        K::CutOutTest => ("Where the pressure control trips", "Raise the head slowly by throttling its water, gauge on, and note the trip.", "At the nameplate setting, give or take the gauge."),
        K::ChargeLook => ("Subcooling and charge", "Read liquid temperature against condensing; compare with the nameplate charge.", "A few degrees of subcooling, no more."),
        K::StandingPressure => ("Standing pressure", "Machine off, water running until in and out agree. Compare pressure with that temperature.", "The pressure of that temperature, no more."),
        K::TubesLook => ("Condenser opened", "Isolate and drain. Take a head off and look into the tubes.", "Bare metal, or a film a brush takes off at once."),
        K::PumpPressure => ("Pump gauges", "Watch both pump gauges for a minute: steady, swinging or low.", "Both needles still, where they usually stand."),
        K::PumpCurrent => ("Pump current", "Clamp one phase and compare with the nameplate.", "A little under the nameplate."),
        K::TripMemory => ("Trip flags and fault memory", "Read flags, overloads and drive memory of fan and pump. Don't clear them.", "Nothing tripped since the last visit."),
        K::PumpRotation => ("Which way the pump turns", "Watch the shaft as it coasts down; compare with the arrow.", "It turns with the arrow."),
        K::PumpStrainerDrop => ("Drop over the pump strainer", "Read the gauges before and after it, pump running.", "Near its clean figure, 1 or 2\u{a0}psi."),
        K::ShutOffHead => ("Pump against a shut valve", "Machines off. Shut its discharge valve, half a minute at most, and read both gauges.", "Its curve's head at no flow, give or take a tenth."),
        K::LoopValves => ("The loop's common valves", "Follow the main from pump to tower and back. Look at each stem.", "Every one open or at its marked balance."),
        K::VentAir => ("Air at the vents", "Crack the high vents with the pump running.", "Water at once, no spitting."),
        K::BasinOnArrival => ("Basin as found", "Measure from the overflow lip down to the water before anyone lets water in.", "Water between the call mark and the overflow."),
        K::CallAsFound => ("What the level control shows", "Read the lamp or the relay as it stands: calling, satisfied or dark. Touch nothing.", "Calling over a low basin, satisfied over a full one."),
        K::LevelNow => ("Basin level now", "Measure from the overflow lip again, and once more a minute later.", "At its working level, or rising while it fills."),
        K::ApproachToday => ("Approach", "Read water off the tower and the wet bulb at the air inlet, out of the sun.", "Near what a clean tower shows at this wet bulb and load."),
        K::FanAndAir => ("Fan and air", "Fan running the right way at speed, air drawn through a clean fill.", "Full speed, air felt across the whole face."),
        K::FanRuns => ("How the fan runs", "Look and listen from outside the guard: full speed, slow or still.", "Full speed while the water is warm."),
        K::FanRotation => ("Which way the fan turns", "Watch it coast down; compare with the arrow and feel where the air goes.", "With the arrow, air the right way."),
        K::BeltLook => ("Fan belt", "Fan locked out, guard off: tension, wear, sheaves.", "Tight, dry, in line."),
        K::FanCommand => ("What the fan is told", "Read thermostat, sensor and drive; compare with the water.", "Told to run full while the water is warm."),
        K::FillLook => ("The fill", "Look through the louvers with a lamp, fan off.", "Open, clean, wet all over."),
        K::InletLook => ("Louvers and eliminators", "Look along the whole inlet and at the eliminators.", "Clear, nothing caught, none missing."),
        K::InletAir => ("Air at the inlet", "Wet bulb at the inlet, then well away upwind.", "Within 1 or 2\u{a0}F of each other."),
        K::SprayLook => ("Spray", "Look at the spray or the hot deck, fan off.", "Even over the whole fill."),
        K::CellLook => ("Water to each cell", "Compare the cells' decks and basins.", "The same in each."),
        K::TowerBypassLook => ("Tower bypass", "Feel the bypass pipe behind its valve.", "No warmer than the room: nothing passes."),
        K::SuctionLook => ("Basin outlet", "From outside, look at screen, equalizer and for a whirl over the outlet.", "Clear screen, flat water."),
        K::WeatherAndLoad => ("Weather and load", "Compare today's wet bulb and the machines running with the tower's nameplate.", "At or below the nameplate wet bulb and load."),
        K::FoamLook => ("Foam on the basin", "Look at the water by the probe with the pump running.", "Clear water around the probe."),
        K::FoamJar => ("Basin water in a jar", "Half fill a jar, close it, shake it ten times, wait half a minute.", "The foam has gone."),
        K::WaterLoss => ("Water going out", "Look at bleed, drain, overflow, pump seal and the pipes below.", "Bleed only when called for, and nothing else running."),
        K::BleedLook => ("Bleed with nothing calling", "Look at the bleed's outlet while its control is off.", "Nothing runs."),
        K::BleedSettings => ("Bleed settings", "Read setpoint, differential and time; test its probe against a hand meter.", "As the water treater set them."),
        K::OverflowLook => ("Overflow", "Is water going over, and does the lip stand above the stop level?", "Dry, and above the stop level."),
        K::DrainLook => ("Drain", "Look at the drain's outlet.", "Dry."),
        K::LevelHold => ("Level with the fill shut", "Shut the fill and the bleed. Measure, wait ten minutes, measure again.", "Falls no more than evaporation takes."),
        K::PumpStopRise => ("Level when the pump stops", "With the owner's leave stop the pump and watch the sump.", "Rises a little and stays under the overflow."),
        K::Conductivity => ("Conductivity", "Hand meter in the basin; compare with the setpoint.", "At the setpoint, give or take a tenth."),
        K::ControlVoltage => ("Voltage at the level control", "Prove the meter, then read across the control's supply. Load it or use low impedance.", "Nominal, no lower than 15 percent under."),
        K::DisconnectLook => ("Disconnect", "Look at the handle and for a tag. Don't close one that is tagged.", "On, no tag."),
        K::PanelSupply => ("Voltage into the transformer", "Prove the meter, then read the line side under low impedance.", "The building's voltage."),
        K::TransformerOutput => ("Voltage out of the transformer", "Prove the meter, then read the control side under load.", "Nominal, no lower than 15 percent under."),
        K::FuseCheck => ("Control fuse", "Voltage across it live, or continuity with it out.", "Nothing across it; continuity."),
        K::CallMark => ("Where it calls", "Measure rod or float setting against the call mark and the pump inlet.", "At the mark, well above the inlet."),
        K::ProbeDried => ("Lift, wipe and dry the probe", "Lift the probe clear, wipe and dry rods and holder, then look for a call.", "A dry probe calls for water within seconds."),
        K::WiresOffHolder => ("Wires off at the holder", "Control supply off, wires off at the holder and apart, supply on: does it call?", "Calls: the cable is clean."),
        K::HolderCap => ("Probe cap", "Supply off. Open the cap and look at the terminals.", "Dry, bright, seal whole."),
        K::HolderWetted => ("Holder wetted on purpose", "Wet the clean-looking holder with basin water, let it drip a minute: does it call again?", "It calls again within the minute."),
        K::ProbeFilm => ("Resistance across the dry holder", "Supply off, probe out and dry, wires off: read probe to probe, then swap the leads.", "Above 1\u{a0}megohm. Below 100\u{a0}kohm is film or damp."),
        K::TerminalsDried => ("Holder with its terminals dried", "Supply off, wires off: wipe and dry the terminals under the cap, leave the holder, read probe to probe.", "Above 1\u{a0}megohm: it was damp. Still low: film."),
        K::FloatByHand => ("Float by hand", "From outside the basin push it down, then lift it.", "Down: it fills. Up: it shuts. Free between."),
        K::FloatLook => ("Float taken out", "Look for weed, scale, a bent arm; shake it for water.", "Clean, light, free."),
        K::LevelSignal => ("Level signal against the tape", "Read the signal at the controller and the tape at the same time.", "Within half an inch of each other."),
        K::StillWellLook => ("Still well", "Flush the still well or sensing pipe and watch the level in it.", "Follows the basin at once."),
        K::Substitution => ("Resistor in place of the probe", "Supply off, probe wires off. Fit 1\u{a0}kohm for wet, open for dry; watch the output.", "Output off with the resistor in, on with it out."),
        K::RelayTap => ("Relay tapped", "Calling, meter on the output: tap its case with an insulated handle.", "The output doesn't blink."),
        K::CycleCall => ("Called ten times over", "Make the control call and stop ten times. Count pulls and flows.", "Ten pulls, ten times full flow."),
        K::ContactDrop => ("Across the output contact", "With the control calling, read across its output contact, circuit complete.", "Next to nothing: it is closed."),
        K::OutputVoltage => ("Voltage at the output", "With the control calling, read from the output terminal to the return.", "Nominal."),
        K::Joints => ("Joints to the fill valve", "Supply off. Tug each wire, look for green or burnt ends.", "Tight and bright."),
        K::CoilVoltage => ("Voltage at the coil", "With the control calling, read across the coil under load.", "Nominal, no lower than 15 percent under, at the coil itself."),
        K::CoilCurrent => ("Current through the coil", "With the control calling, clamp one wire of the coil.", "VA over volts from its nameplate."),
        K::CoilResistance => ("Resistance of the coil", "Supply off, one wire off: read the coil.", "Its nameplate figure; never open, never near zero."),
        K::CoilPull => ("Does the coil pull", "With the control calling, feel for pull with a steel blade at the nut; listen for hum.", "The blade is held, a faint hum, the coil warms."),
        K::FlowOnCall => ("Flow while it calls", "With the control calling, listen at the valve and watch the outlet.", "Full flow within seconds of the call."),
        K::FillStops => ("Does the fill stop", "With the basin full or the control satisfied, look at the outlet.", "Dry within seconds."),
        K::ToldToShut => ("Valve told to shut at the coil", "Supply off, a coil wire off and made safe (open without power: power it): does the water stop?", "It stops within seconds."),
        K::ForceValve => ("Open the fill by hand", "Use the manual stem or the bypass. Compare with the usual full flow.", "Full flow at once."),
        K::ValveArrow => ("Arrow on the fill valve", "Find the arrow cast in the body.", "With the flow."),
        K::ValveStrip => ("Fill valve opened up", "Isolated and drained: look at pilot hole, diaphragm, seat, spring; does the plunger bind?", "Clean hole, whole diaphragm, free plunger."),
        K::DiaphragmLook => ("Diaphragm against the light", "Bonnet off: stretch it gently against a lamp, look at its bead.", "No light through it, bead whole."),
        K::Differential => ("Pressure over the fill valve", "Gauge before less gauge after, valve flowing. Compare with its nameplate's least.", "Above the least on the nameplate."),
        K::HandValves => ("Hand valves", "Follow the line from the entry to the basin. Turn each one to see.", "Every one open, handles in line with the pipe."),
        K::StrainerBlowOff => ("Blow off the strainer", "Open the blow-off to a bucket and look at what comes out.", "A strong clean jet after the first dirt."),
        K::PressureAtValve => ("Pressure before the fill valve", "Read it at the valve while it should flow.", "Near the supply's, 15\u{a0}psi or more."),
        K::LineCold => ("Makeup line outdoors", "Feel and look along the outdoor run for ice.", "No frost, heat tape warm in frost."),
        K::PressureAfterReducer => ("Pressure after the reducer", "Read the gauge behind it with the fill running.", "At its setting, not falling away."),
        K::BackflowLook => ("Backflow preventer", "Look at the relief port and the gauges either side.", "Dry port, its usual drop."),
        K::MainsPressure => ("Supply pressure", "Read the gauge with the fill running, then with it shut.", "Near its usual, and not falling away while it fills."),
        K::MachineRecorder => ("Recorder on one machine", "Record head, water in and out and current; come back when it has tripped again.", "Trips only at its setting, range as usual."),
        K::LevelRecorder => ("Recorder on the fill", "Record level, call and coil voltage; come back when it has happened again.", "Level kept, a call for every fall."),
        K::LoopRecorder => ("Recorder on the loop", "Record pump and fan current, the fan's command and both water temperatures; come back when it has happened again.", "All as usual up to the trip."),
        K::Restart => ("Restart the machines", "Reset and start the machines that were out one by one, at their load. Watch each head until it stands still, a quarter hour.", "Every head comes to its usual and stays there."),
        K::CoilInRecord => ("Coil in the record", "In the level record: the coil's voltage while the level fell.", "Nominal, no lower than 15 percent under."),
        K::PumpInRecord => ("Pump in the record", "In the loop record: the pump's current when it happened.", "As before it happened."),
        K::FanInRecord => ("Fan in the record", "In the loop record: the fan's current and command when it happened.", "It ran as told while the water was warm."),
        K::LoadInRecord => ("Load in the record", "In this machine's record: current and range as it tripped, against the nameplate.", "At or below its nameplate."),
        K::RefillTest => ("Refill test", "Draw the level below the call mark, then time it back to the stop mark, hands off.", "Calls at the mark, fills in its usual time, stops by itself."),
    }
}

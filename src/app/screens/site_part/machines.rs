//! The machines on the loop: name, refrigerant, capacity, cut-out, nameplate.
//! A machine keeps its name in the log when it is corrected.

use crate::app::view::prelude::*;

use super::{Fact, Form, frame};
use crate::app::ledger::ledger;
use crate::app::parts::field::{QuantityField, TextField, Typing};
use crate::app::prefs::prefs;
use crate::physics::refrigerant::Refrigerant;
use crate::quantity::{Bounds, Kind, Unit, Value};
use crate::record::{Machine, MachineId, Site, SiteId};
use crate::words::Phrase as P;

/// One machine being typed.
#[derive(Clone, Copy)]
struct MachineForm {
    site: SiteId,
    n: usize,
    id: MachineId,
    /// Described before: it stays, though its name is emptied.
    stands: bool,
    name: RwSignal<String>,
    nameplate: RwSignal<String>,
    refrigerant: RwSignal<Option<Refrigerant>>,
    cut_out: Fact,
    rejects: Fact,
    off: RwSignal<bool>,
}

/// Kept in a draft for "not known".
const UNKNOWN: &str = "-";

impl MachineForm {
    fn new(site: SiteId, n: usize, known: Option<&Machine>) -> Self {
        let key = |name: &str| format!("site {site} {name} {n}");
        let refrigerant = match ledger().text(&format!("draft {}", key("refrigerant"))) {
            Some(kept) => Refrigerant::ALL
                .into_iter()
                .find(|r| r.designation() == kept),
            None => known.and_then(|m| m.refrigerant),
        };
        Self {
            site,
            n,
            id: known.map_or_else(|| ledger().id(), |m| m.id),
            stands: known.is_some(),
            name: RwSignal::new(known.map_or(String::new(), |m| m.name.clone())),
            nameplate: RwSignal::new(known.map_or(String::new(), |m| m.nameplate.clone())),
            refrigerant: RwSignal::new(refrigerant),
            cut_out: Fact::new(
                key("cut-out"),
                Kind::GaugePressure,
                Bounds::of(1.0, 700.0, Unit::Psig),
                known.and_then(|m| m.cut_out).map(Value::gauge_pressure),
            ),
            rejects: Fact::new(
                key("rejects"),
                Kind::Heat,
                Bounds::of(0.1, 20_000.0, Unit::Kilowatt),
                known.and_then(|m| m.rejects).map(Value::heat),
            ),
            off: RwSignal::new(ledger().text(&format!("draft {}", key("off"))).is_some()),
        }
    }

    fn key(self, name: &str) -> String {
        format!("site {} {name} {}", self.site, self.n)
    }

    /// The machine; nothing while something is refused, and nothing within
    /// when the form was left empty.
    fn machine(self) -> Option<Option<Machine>> {
        let cut_out = self.cut_out.held().ok()?;
        let rejects = self.rejects.held().ok()?;
        let name = self.name.get().trim().to_owned();
        let nameplate = self.nameplate.get().trim().to_owned();
        let refrigerant = self.refrigerant.get();
        let said = !(name.is_empty() && nameplate.is_empty())
            || refrigerant.is_some()
            || cut_out.is_some()
            || rejects.is_some();
        if self.off.get() || !(said || self.stands) {
            return Some(None);
        }
        let name = match name.is_empty() {
            true => prefs().words.machine_numbered(self.n + 1),
            false => name,
        };
        Some(Some(Machine {
            id: self.id,
            name,
            refrigerant,
            cut_out: cut_out.and_then(Value::as_gauge_pressure),
            rejects: rejects.and_then(Value::as_heat),
            nameplate,
        }))
    }
}

/// The form.
pub fn form(id: SiteId, site: Site) -> View {
    let words = prefs().words;
    let tried = RwSignal::new(false);
    let count_key = format!("site {id} machines");
    let known = site.machines;
    let drafted = ledger().text(&format!("draft {count_key}"));
    let count = drafted.and_then(|n| n.parse().ok()).unwrap_or(0);
    let count = known.len().max(count).max(1);
    let first = (0..count).map(|n| MachineForm::new(id, n, known.get(n)));
    let machines = RwSignal::new(first.collect::<Vec<_>>());
    let fields = move || {
        let mut all: Vec<Typing> = Vec::new();
        for form in machines.get_untracked() {
            all.extend([form.cut_out.typing, form.rejects.typing]);
        }
        all
    };
    let count_kept = StoredValue::new(count_key);
    let texts = move || {
        let mut all = vec![count_kept.get_value()];
        for form in machines.get_untracked() {
            all.extend(["machine", "plate", "refrigerant", "off"].map(|name| form.key(name)));
        }
        all
    };
    let change = move |site: &mut Site| {
        let mut kept = Vec::new();
        for form in machines.get_untracked() {
            kept.extend(form.machine()?);
        }
        site.machines = kept;
        Some(())
    };
    let add = move |_| {
        let n = machines.with_untracked(Vec::len);
        machines.update(|m| m.push(MachineForm::new(id, n, None)));
        let key = format!("draft {}", count_kept.get_value());
        ledger().keep_text(&key, &(n + 1).to_string());
    };
    let form = Form {
        id,
        title: P::Machines,
        tried,
        fields: Box::new(fields),
        texts: Box::new(texts),
        change: Box::new(change),
    };
    let body = markup! {
        {move || {
            machines
                .get()
                .into_iter()
                .map(|machine| markup! { <MachineFields machine /> })
                .collect_view()
        }}
        <button type="button" data-test="add-machine" on:click=tap(add)>
            {words.phrase(P::AddMachine)}
        </button>
    };
    frame(form, body)
}

#[component]
fn MachineFields(machine: MachineForm) -> View {
    let words = prefs().words;
    let n = machine.n;
    let choose = move |ev| {
        let chosen = event_target_value(&ev);
        let known = Refrigerant::ALL
            .into_iter()
            .find(|r| r.designation() == chosen);
        machine.refrigerant.set(known);
        let kept = known.map_or(UNKNOWN, |r| r.designation());
        ledger().keep_text(&format!("draft {}", machine.key("refrigerant")), kept);
    };
    let take_off = move |_| {
        let off = !machine.off.get_untracked();
        machine.off.set(off);
        let kept = if off { "yes" } else { "" };
        ledger().keep_text(&format!("draft {}", machine.key("off")), kept);
    };
    let id = format!("f-refrigerant-{n}");
    let off = move || match machine.off.get() {
        true => P::MachineBack,
        false => P::MachineOff,
    };
    markup! {
        <fieldset class="fields">
            <TextField key=machine.key("machine") text=machine.name test=format!("machine-{n}")
                label=words.machine_numbered(n + 1) />
            <div class="two">
                <div class="field">
                    <label for=id.clone()>{words.phrase(P::RefrigerantLabel)}</label>
                    <select id=id data-test=format!("refrigerant-{n}") on:change=choose>
                        <option value="" selected=move || machine.refrigerant.get().is_none()>
                            {words.phrase(P::NotKnown)}
                        </option>
                        {Refrigerant::ALL
                            .map(|r| {
                                markup! {
                                    <option
                                        value=r.designation()
                                        selected=move || machine.refrigerant.get() == Some(r)
                                    >
                                        {r.designation()}
                                    </option>
                                }
                            })
                            .collect_view()}
                    </select>
                </div>
                <QuantityField typing=machine.cut_out.typing label=words.phrase(P::CutOut)
                    test=format!("cut-out-{n}") />
            </div>
            <QuantityField typing=machine.rejects.typing label=words.phrase(P::Rejects)
                hint=words.phrase(P::RejectsHint) test=format!("rejects-{n}") />
            <TextField key=machine.key("plate") text=machine.nameplate
                label=words.phrase(P::Nameplate) hint=words.phrase(P::NameplateHint)
                test=format!("plate-{n}") />
            <button type="button" class="plain" data-test=format!("off-{n}") on:click=tap(take_off)>
                {move || words.phrase(off())}
            </button>
        </fieldset>
    }
}

//! Units, language, light, who does the visits, the lock, backups.

use super::backup::{Backup, CardForm};
use super::lock::lock_now;
use crate::app::parts::choice::choice;
use crate::app::view::prelude::*;

use crate::app::ledger::ledger;
use crate::app::parts::install::install;
use crate::app::parts::shell::Screen;
use crate::app::prefs::{Light, prefs};
use crate::app::route::Route;
use crate::quantity::System;
use crate::store::has_lock;
use crate::words::{Phrase as P, Tongue};

/// The settings.
#[component]
pub fn Settings() -> View {
    let prefs = prefs();
    let ledger = ledger();
    let words = prefs.words;
    let title = words.phrase(P::Settings);
    let systems = [
        (System::Us, P::UnitsUs, "units-us"),
        (System::Si, P::UnitsSi, "units-si"),
    ];
    let lights = Light::ALL.into_iter().zip([
        (P::LightPhone, "light-phone"),
        (P::LightDay, "light-day"),
        (P::LightDark, "light-dark"),
        (P::LightGlare, "light-glare"),
    ]);
    markup! {
        <Screen title name="settings" back=(Route::Home, words.phrase(P::Home).to_owned())>
            <section>
                <h2>{words.phrase(P::Units)}</h2>
                <div class="seg" role="group" aria-label=words.phrase(P::Units)>
                    {systems
                        .map(|(system, name, test)| {
                            choice(
                                test,
                                words.phrase(name),
                                move || prefs.system.get() == system,
                                move || prefs.choose_system(ledger, system),
                            )
                        })
                        .collect_view()}
                </div>
                <p class="sub small">{words.phrase(P::UnitsHint)}</p>
            </section>
            <section>
                <h2>{words.phrase(P::Language)}</h2>
                <div class="seg" role="group" aria-label=words.phrase(P::Language)>
                    {Tongue::ALL
                        .map(|tongue| {
                            choice(
                                format!("language-{}", tongue.tag()),
                                tongue.name(),
                                move || prefs.tongue.get() == tongue,
                                move || prefs.choose_tongue(ledger, tongue),
                            )
                        })
                        .collect_view()}
                </div>
            </section>
            <section>
                <h2>{words.phrase(P::Light)}</h2>
                <div class="answers" role="group" aria-label=words.phrase(P::Light)>
                    {lights
                        .map(|(light, (name, test))| {
                            choice(
                                test,
                                words.phrase(name),
                                move || prefs.light.get() == light,
                                move || prefs.choose_light(ledger, light),
                            )
                        })
                        .collect_view()}
                </div>
            </section>
            <CardForm />
            {install()}
            <section>
                <h2>{words.phrase(P::Lock)}</h2>
                <div class="pair">
                    <a class="button" href=Route::Lock.href() data-test="to-lock">
                        {words.phrase(if has_lock() { P::LockOnLink } else { P::LockOffLink })}
                    </a>
                    {lock_now()}
                </div>
            </section>
            <Backup />
            <p class="sub small">
                <a class="tap-line" href="notices.txt" target="_blank" rel="noopener" data-test="notices">
                    {words.phrase(P::Notices)}
                </a>
            </p>
        </Screen>
    }
}

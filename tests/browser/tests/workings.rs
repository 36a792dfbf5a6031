//! Workings: a calculation on its own, with wrong, missing and foreign input,
//! and filled from a visit.

use coldsump_browser::{Light, Phone, Server};

#[tokio::test]
async fn a_calculation_takes_any_unit_refuses_nonsense_and_forgets_nothing() {
    let server = Server::start();
    let phone = Phone::open(Light::Day).await;
    phone.start(&server).await;
    phone.tap("to-workings").await;
    phone.tap("working-air").await;
    phone.find("screen-working").await;

    // Nothing given: it says what it needs.
    phone.reads("a-WetBulb", "Needs").await;
    phone.type_into("DryBulb", "35 C").await;
    phone.type_into("Humidity", "40").await;
    // 35 C, 40 % at sea level: 23.934 C by PsychroLib 2.5.0.
    phone.reads("a-WetBulb", "75.1").await;
    phone.find("picture").await;

    // Nonsense stands beside its field, and the answer says what is missing.
    phone.type_into("Humidity", "damp").await;
    let refused = "document.querySelector('.field[data-state=refused] input')?.dataset.test";
    phone
        .js("document.querySelector('[data-test=Humidity]').blur()")
        .await;
    phone.holds(&format!("{refused} === 'Humidity'")).await;
    phone.reads("a-WetBulb", "Needs: Outdoor humidity").await;

    // The other system answers the same in its own unit, after a reload too.
    phone.type_into("Humidity", "40").await;
    phone.go("#/settings").await;
    phone.tap("units-si").await;
    phone
        .holds("document.querySelector('[data-test=units-si][aria-pressed=true]')")
        .await;
    phone.reload().await;
    phone.mounted().await;
    phone.go("#/workings/air").await;
    phone.reads("a-WetBulb", "23.9").await;
    phone.shot("working-air-si").await;
    phone.tap("clear-working").await;
    phone.reads("a-WetBulb", "Needs").await;
}

#[tokio::test]
async fn a_bare_number_keeps_the_unit_it_was_typed_in() {
    let server = Server::start();
    let phone = Phone::open(Light::Dark).await;
    phone.start(&server).await;
    phone.go("#/workings/air").await;
    phone.type_into("DryBulb", "95").await;
    phone.type_into("Humidity", "40").await;
    phone.reads("a-WetBulb", "75.1").await;
    phone.go("#/settings").await;
    phone.tap("units-si").await;
    phone.go("#/workings/air").await;
    // Still 95 F, answered in C.
    phone.reads("a-WetBulb", "23.9").await;
}

#[tokio::test]
async fn a_working_opened_in_a_visit_is_filled_from_it() {
    let server = Server::start();
    let phone = Phone::open(Light::Day).await;
    phone.start(&server).await;
    phone.tap("open-demo").await;
    phone.tap("next").await;
    phone.find("screen-found").await;
    phone.type_into("head-0", "205").await;
    phone.type_into("leaving-water", "103").await;
    phone.type_into("dry-bulb", "88").await;
    phone
        .js("document.querySelector('[data-test=dry-bulb]').blur()")
        .await;
    phone.reads("screen-found", "Kept").await;
    phone.tap("next").await;
    phone.tap("to-workings").await;
    phone.tap("working-head").await;
    phone.find("screen-working").await;
    // R-134a at 205 psig condenses at 132.1 F (CoolProp 8.0.0): 29.1 F over.
    phone.reads("a-CondensingTemperature", "132.1").await;
    phone.reads("a-OverLeavingWater", "29.1").await;
    phone.shot("working-head").await;
}

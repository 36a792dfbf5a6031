//! A new site with one tower and two machines, made by typing; nonsense is
//! refused beside the field and nothing typed is lost.

use coldsump_browser::{Light, Phone, Server};

#[tokio::test]
async fn a_site_is_described_by_typing_and_survives_a_reload() {
    let server = Server::start();
    let phone = Phone::open(Light::Dark).await;
    phone.goto(&server.url()).await;
    phone.mounted().await;
    phone.tap("new-site").await;
    phone.find("screen-new-site").await;
    phone.shot("new-site").await;

    // Kept with nothing filled in: says what is missing, beside the fields.
    phone.tap("save-site").await;
    phone.find("incomplete").await;
    // ... and puts the cursor into the first of them.
    let cursor = "document.activeElement?.dataset.test";
    phone.holds(&format!("{cursor} === 'site-name'")).await;

    phone
        .type_into("site-name", "Dray & Sons <Cold> Store")
        .await;
    phone.type_into("length", "2,4 m").await;
    phone.type_into("width", "6 ft 6 in").await;
    phone.type_into("depth", "400 mm").await;
    phone.type_into("stop", "3").await;
    phone.type_into("call", "2").await;
    phone.type_into("inlet", "12").await;
    phone.type_into("flow", "11.4 L/s").await;
    phone.type_into("hot", "hot").await;
    phone.type_into("machine-0", "Chiller A").await;
    phone.type_into("cut-out-0", "350").await;
    phone.type_into("machine-1", "Chiller B").await;
    phone.tap("save-site").await;

    // Two faults stand: a call above the stop, and a temperature in words.
    phone.find("incomplete").await;
    let refused = "[...document.querySelectorAll('.field[data-state=refused] input')]
                     .map(i => i.dataset.test).join()";
    phone.holds(&format!("({refused}) === 'call,hot'")).await;
    phone.holds(&format!("{cursor} === 'call'")).await;
    phone.shot("new-site-refused").await;

    // Everything typed, faults included, is there after a reload.
    phone.reload().await;
    phone.mounted().await;
    for (field, typed) in [
        ("site-name", "Dray & Sons <Cold> Store"),
        ("length", "2,4 m"),
        ("call", "2"),
        ("hot", "hot"),
        ("machine-1", "Chiller B"),
    ] {
        let value = format!("document.querySelector('[data-test={field}]')?.value === '{typed}'");
        phone.holds(&value).await;
    }
    phone.type_into("call", "6").await;
    phone.type_into("hot", "95").await;
    phone.tap("save-site").await;
    phone.find("screen-site").await;
    phone.reads("screen-site", "Dray & Sons <Cold> Store").await;
    phone.reads("screen-site", "Chiller B").await;
    phone.shot("site").await;

    // And a visit opens there, with what the customer said.
    phone.type_into("complaint", "Two out since noon").await;
    phone.tap("open-visit").await;
    phone.reads("complaint-said", "Two out since noon").await;
    phone.shot("overview").await;
    assert_eq!(phone.problems(&server.origin()).await, []);
}

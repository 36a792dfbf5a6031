//! A site made in a minute and completed part by part; nonsense is refused
//! beside the field and nothing typed is lost.

use coldsump_browser::{Light, Phone, Server};

const CURSOR: &str = "document.activeElement?.dataset.test";
const REFUSED: &str = "[...document.querySelectorAll('.field[data-state=refused] input')]
                         .map(i => i.dataset.test).join()";

#[tokio::test]
async fn a_site_is_named_completed_by_typing_and_survives_a_reload() {
    let server = Server::start();
    let phone = Phone::open(Light::Dark).await;
    phone.start(&server).await;
    phone.tap("new-site").await;
    phone.find("screen-new-site").await;
    phone.shot("new-site").await;

    // Only a name is needed; without it the cursor goes there.
    phone.tap("save-site").await;
    phone.holds(&format!("{CURSOR} === 'site-name'")).await;
    phone
        .type_into("site-name", "Dray & Sons <Cold> Store")
        .await;
    phone.tap("fewer").await;
    phone.tap("save-site").await;
    phone.find("screen-site").await;
    phone.reads("screen-site", "Dray & Sons <Cold> Store").await;
    phone.reads("part-basin", "Not known yet").await;
    phone.reads("part-machines", "Machine 2").await;
    phone.shot("site-new").await;

    // The basin: half a shape is refused, and so are marks out of order.
    phone.tap("part-basin").await;
    phone.find("screen-site-part").await;
    phone.type_into("length", "2,4 m").await;
    phone.type_into("depth", "400 mm").await;
    phone.type_into("stop", "3").await;
    phone.type_into("call", "2").await;
    phone.type_into("inlet", "12").await;
    phone.tap("save-part").await;
    phone.find("incomplete").await;
    phone.holds(&format!("({REFUSED}) === 'width,call'")).await;
    phone.holds(&format!("{CURSOR} === 'width'")).await;
    phone.shot("site-basin-refused").await;

    // Everything typed, faults included, is there after a reload.
    phone.reload().await;
    phone.mounted().await;
    for (field, typed) in [("length", "2,4 m"), ("depth", "400 mm"), ("call", "2")] {
        let value = format!("document.querySelector('[data-test={field}]')?.value === '{typed}'");
        phone.holds(&value).await;
    }
    phone.type_into("width", "6 ft 6 in").await;
    phone.type_into("call", "6").await;
    phone.find("basin-section").await;
    phone.tap("save-part").await;
    phone.find("screen-site").await;
    phone.reads("part-basin", "call 6 in").await;

    // A table from the lip down: a row that does not go down is refused.
    phone.tap("part-basin").await;
    phone.tap("volumes").await;
    phone.type_into("row-0-level", "0").await;
    phone.type_into("row-0-value", "500").await;
    phone.type_into("row-1-level", "8").await;
    phone.type_into("row-1-value", "200").await;
    phone.tap("add-row").await;
    phone.type_into("row-2-level", "7").await;
    phone.type_into("row-2-value", "0").await;
    phone.holds(&format!("({REFUSED}) === 'row-2-level'")).await;
    phone.type_into("row-2-level", "400 mm").await;
    phone.find("basin-section").await;
    phone.shot("site-basin-table").await;
    phone.tap("save-part").await;
    phone.find("screen-site").await;

    // The machines; one is taken off.
    phone.tap("part-machines").await;
    phone.type_into("machine-0", "Chiller A").await;
    phone.type_into("cut-out-0", "350").await;
    phone.tap("off-1").await;
    phone.shot("site-machines").await;
    phone.tap("save-part").await;
    phone.reads("part-machines", "Chiller A").await;

    // The plant, one thumb's choice at a time.
    phone.tap("part-plant").await;
    phone.tap("LevelControlAsked-FloatSwitch").await;
    phone.tap("ControlNominal-Volts120").await;
    phone.shot("site-plant").await;
    phone.tap("part-done").await;
    phone.reads("part-plant", "Float switch").await;
    phone.reads("part-plant", "120 V").await;
    phone.shot("site").await;

    // And a visit opens there, with what the customer said.
    phone.type_into("complaint", "Two out since noon").await;
    phone.tap("open-visit").await;
    phone.reads("complaint-said", "Two out since noon").await;
    phone.find("waterline").await;
    phone.shot("overview").await;
    assert_eq!(phone.problems(&server.origin()).await, []);
}

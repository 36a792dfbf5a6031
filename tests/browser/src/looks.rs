//! What can be measured of how a page looks: axe-core's rules, sizes of what is
//! touched, words that are cut off. Each takes a driver, of whatever browser.

use std::fs;
use std::time::Duration;

use serde_json::{Value, json};
use thirtyfour::WebDriver;

use crate::build::project;

/// Which of axe-core's rules are asked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Rules {
    /// WCAG 2.0 to 2.2, A and AA, and axe's own good practice.
    All,
    /// Contrast as AA asks: 4.5 to 1, large text 3 to 1.
    Contrast,
    /// Contrast as AAA asks: 7 to 1, large text 4.5 to 1.
    HighContrast,
}

impl Rules {
    fn options(self) -> Value {
        let only = |kind: &str, values: Value| json!({ "type": kind, "values": values });
        let run_only = match self {
            Self::All => only(
                "tag",
                json!([
                    "wcag2a",
                    "wcag2aa",
                    "wcag21a",
                    "wcag21aa",
                    "wcag22aa",
                    "best-practice"
                ]),
            ),
            Self::Contrast => only("rule", json!(["color-contrast"])),
            Self::HighContrast => only("rule", json!(["color-contrast-enhanced"])),
        };
        let mut options = json!({ "runOnly": run_only, "resultTypes": ["violations"] });
        if self == Self::All {
            // Ours is stricter: 48 px, not 24.
            options["rules"] = json!({ "target-size": { "enabled": true } });
        }
        options
    }
}

/// What axe-core objects to on the page, one line each.
///
/// # Panics
/// When axe-core is not installed or does not run in the page.
pub async fn violations(driver: &WebDriver, rules: Rules) -> Vec<String> {
    let there = driver
        .execute("return typeof axe === 'object'", Vec::new())
        .await
        .expect("the page answers");
    if there.json() != &Value::Bool(true) {
        let path = project().join("node_modules/axe-core/axe.min.js");
        let source = fs::read_to_string(path).expect("axe-core is installed");
        driver
            .execute(&source, Vec::new())
            .await
            .expect("axe-core loads");
    }
    driver
        .set_script_timeout(Duration::from_secs(60))
        .await
        .expect("a longer limit");
    let script = "
        const done = arguments[arguments.length - 1];
        axe.run(document, arguments[0]).then(
            (found) => done(found.violations.flatMap((rule) => rule.nodes.map((node) =>
                `${rule.id}: ${node.target.join(' ')}: ${node.failureSummary}`))),
            (error) => done([String(error)]));";
    let said = driver
        .execute_async(script, vec![rules.options()])
        .await
        .expect("axe-core runs");
    lines(said.json())
}

/// The page as it stands, as a page of its own that needs no program: what is
/// typed and chosen is in it, scripts are not.
///
/// # Panics
/// When the page does not answer.
pub async fn as_it_stands(driver: &WebDriver) -> String {
    let script = "
        const typed = 'input, textarea, select, option';
        const copy = document.documentElement.cloneNode(true);
        const copies = copy.querySelectorAll(typed);
        document.querySelectorAll(typed).forEach((one, i) => {
            const is = copies[i];
            if (one.matches('option')) is.toggleAttribute('selected', one.selected);
            else if (one.matches('[type=checkbox], [type=radio]')) is.toggleAttribute('checked', one.checked);
            else if (one.matches('textarea')) is.textContent = one.value;
            else if (one.matches('input:not([type=file])')) is.setAttribute('value', one.value);
        });
        const program = 'script, link[rel$=preload], link[rel=manifest]';
        copy.querySelectorAll(program).forEach((one) => one.remove());
        return '<!doctype html>' + copy.outerHTML;";
    let said = driver.execute(script, Vec::new()).await;
    let said = said.expect("the page answers");
    said.json().as_str().expect("a page").to_owned()
}

/// Whatever can be touched and is lower or narrower than 48 px.
///
/// # Panics
/// When the page does not answer.
pub async fn small_targets(driver: &WebDriver) -> Vec<String> {
    let script = "
        const touched = 'a[href], button, input, select, textarea, summary, label.button, [role=button]';
        const out = [];
        for (const one of document.querySelectorAll(touched)) {
            if (one.matches('.hidden-visually, [type=hidden]') || !one.checkVisibility()) continue;
            const box = one.getBoundingClientRect();
            if (box.width >= 47.9 && box.height >= 47.9) continue;
            out.push(`target ${Math.round(box.width)} x ${Math.round(box.height)}: `
                + `${one.tagName} ${one.dataset.test ?? ''} ${one.textContent.trim().slice(0, 40)}`);
        }
        return out;";
    let said = driver.execute(script, Vec::new()).await;
    lines(said.expect("the page answers").json())
}

/// Whatever is wider than the window or than what holds it, and words that
/// break in the middle.
///
/// # Panics
/// When the page does not answer.
pub async fn cut_off(driver: &WebDriver) -> Vec<String> {
    let script = "
        const out = [];
        const width = document.documentElement.clientWidth;
        if (document.documentElement.scrollWidth > width) {
            out.push(`the page is ${document.documentElement.scrollWidth} wide in ${width}`);
        }
        const name = (one) => `${one.tagName}.${one.className.baseVal ?? one.className}`
            + ` ${one.dataset.test ?? ''} ${one.textContent.trim().slice(0, 40)}`;
        for (const one of document.querySelectorAll('body *')) {
            if (one.closest('svg, pre, .hidden-visually') || !one.checkVisibility()) continue;
            const box = one.getBoundingClientRect();
            if (box.width && (box.right > width + 1 || box.left < -1)) out.push(`outside: ${name(one)}`);
            if (one.scrollWidth > one.clientWidth + 1 && one.clientWidth
                && getComputedStyle(one).display !== 'inline'
                && !one.matches('input, textarea, select')) out.push(`too narrow: ${name(one)}`);
        }
        // A word on two lines, where no hyphen or slash lets it break.
        const range = document.createRange();
        const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
        for (let node = walk.nextNode(); node; node = walk.nextNode()) {
            const host = node.parentElement;
            if (host.closest('svg, pre, script, option, textarea, .hidden-visually, [lang=de]')) continue;
            if (!host.checkVisibility() || getComputedStyle(host).hyphens === 'auto') continue;
            for (const word of node.data.matchAll(/[\\p{L}\\p{N}]{2,}/gu)) {
                range.setStart(node, word.index);
                range.setEnd(node, word.index + word[0].length);
                const tops = new Set([...range.getClientRects()]
                    .filter((box) => box.width).map((box) => Math.round(box.top)));
                if (tops.size > 1) out.push(`broken word: ${word[0]} in ${name(host)}`);
            }
        }
        return out;";
    let said = driver.execute(script, Vec::new()).await;
    lines(said.expect("the page answers").json())
}

fn lines(found: &Value) -> Vec<String> {
    let all = found.as_array().expect("a list");
    let text = |one: &Value| one.as_str().unwrap_or_default().to_owned();
    all.iter().map(text).collect()
}

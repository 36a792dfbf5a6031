//! The web build's entry point. The program runs in a browser: `./dev serve`.

fn main() {
    #[cfg(target_arch = "wasm32")]
    coldsump::app::start();
    #[cfg(not(target_arch = "wasm32"))]
    eprintln!("Coldsump runs in a browser: ./dev serve");
}

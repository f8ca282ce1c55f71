//! The entry of the page: what to say if it breaks, then the page itself.

/// Shows a broken page in plain words, then starts it.
fn main() {
    std::panic::set_hook(Box::new(batterwright::ui::app::say_broken));
    batterwright::ui::start();
}

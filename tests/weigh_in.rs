//! The bench: bowls sorted by hand, weights that can be added up on paper, overshoots, timers.

mod weigh_in {
    mod bowls;
    mod scale;
    mod timers;
}

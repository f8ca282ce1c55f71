//! Long work in slices: it stops at every [`pause`], so that whoever waits for it may do something else in between.

use std::future::Future;
use std::pin::Pin;
use std::task::{Context, Poll, Waker};

/// Stops once.
pub fn pause() -> impl Future<Output = ()> {
    let mut paused = false;
    std::future::poll_fn(move |_| {
        if std::mem::replace(&mut paused, true) {
            Poll::Ready(())
        } else {
            Poll::Pending
        }
    })
}

/// Work that was begun.
pub struct Slices<T>(Pin<Box<dyn Future<Output = T>>>);

impl<T> Slices<T> {
    /// Begins nothing yet.
    pub fn of(work: impl Future<Output = T> + 'static) -> Self {
        Self(Box::pin(work))
    }

    /// Goes on to the next pause; the answer once there is one. It must not be called after that.
    pub fn go_on(&mut self) -> Option<T> {
        match self
            .0
            .as_mut()
            .poll(&mut Context::from_waker(Waker::noop()))
        {
            Poll::Ready(answer) => Some(answer),
            Poll::Pending => None,
        }
    }

    /// All of it at once.
    pub fn at_once(mut self) -> T {
        loop {
            if let Some(answer) = self.go_on() {
                return answer;
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn stops_at_every_pause() {
        let work = || async {
            let mut sum = 0;
            for number in 1..=3 {
                sum += number;
                pause().await;
            }
            sum
        };
        let mut slices = Slices::of(work());
        let stops = std::iter::from_fn(|| Some(slices.go_on())).take_while(Option::is_none);
        assert_eq!(stops.count(), 3);
        assert_eq!(Slices::of(work()).at_once(), 6);
    }
}

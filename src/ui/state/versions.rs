//! Versions: keeping the open recipe as a new one of another, and what differs between the two.

use super::Bench;
use crate::baking::saved::VersionOf;
use crate::baking::worksheet::{Difference, Inputs, Looks, difference, worksheet_again};
use crate::ui::device;
use crate::ui::storage::{self, NotKept};
use leptos::prelude::*;

/// Where the recipe is that a version was made from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Original {
    /// On the shelf, as it was when the version was made.
    Same,
    /// On the shelf, and changed since.
    Changed,
    /// No longer there, or not to be read; the version's own copy stands in.
    Gone,
}

/// A version held against what it was made from.
pub struct Compared {
    /// What differs.
    pub difference: Difference,
    /// Where the original is.
    pub original: Original,
}

impl Bench {
    /// A piece of what the open recipe is a version of, followed; `None` where it is none.
    pub fn version<R>(self, read: impl FnOnce(&VersionOf) -> R) -> Option<R> {
        self.version.with(|version| version.as_ref().map(read))
    }

    /// A name for a new version of the open recipe that none of the shelf has yet: "Version 2".
    pub fn version_name(self) -> String {
        let recipes = storage::shelf().unwrap_or_default().recipes;
        let is_taken = |name: &String| {
            let mut versions = recipes.iter().filter_map(|kept| kept.version.as_ref());
            versions.any(|version| version.name == *name)
        };
        let mut names = (2_u32..).map(|number| format!("Version {number}"));
        names.find(|name| !is_taken(name)).unwrap_or_default()
    }

    /// Keeps the open recipe as it is, makes a version of it, and opens that.
    ///
    /// # Errors
    /// A sentence's middle that says why one of the two could not be kept; then nothing is opened.
    pub fn keep_as_version(self, name: &str) -> Result<(), String> {
        self.keep_version(name, self.inputs.get_untracked())
    }

    /// Keeps the open recipe as it is, makes a version of it that is as given, and opens that.
    ///
    /// # Errors
    /// As for [`Bench::keep_as_version`].
    pub(super) fn keep_version(self, name: &str, version: Inputs) -> Result<(), String> {
        let (id, of) = self.write_version(name, &version)?;
        storage::set_last_open(&id);
        self.show(id, true, version, Some(of));
        Ok(())
    }

    /// Makes a version of the open recipe that is as given, and leaves the open one open.
    ///
    /// # Errors
    /// As for [`Bench::keep_as_version`].
    pub fn keep_version_aside(self, name: &str, version: &Inputs) -> Result<(), String> {
        // What stays open is one of the baker's own from here on.
        self.keep_open();
        self.write_version(name, version)?;
        self.take_up_trials();
        Ok(())
    }

    fn write_version(self, name: &str, version: &Inputs) -> Result<(String, VersionOf), String> {
        self.flush();
        // A demo that nobody has changed is kept from here on too.
        self.keep();
        if let Some(reason) = self.unkept.get_untracked() {
            return Err(reason);
        }
        let id = device::fresh_id();
        let of = VersionOf {
            name: name.trim().to_owned(),
            of: self.open_id(),
            original: self.inputs.get_untracked(),
        };
        let written = storage::keep_recipe(&id, version, Some(&of)).map_err(NotKept::reason)?;
        self.keeping.note(written.effort);
        Ok((id, of))
    }

    /// Gives the open version another name.
    pub fn name_version(self, name: String) {
        self.version.update(|version| {
            if let Some(version) = version {
                version.name = name;
            }
        });
        self.keep();
    }

    /// The open version held against its original as that stands now, or as it was when the version was made.
    pub fn compared(self, as_it_was: bool) -> Option<Compared> {
        let version = self.version.get_untracked()?;
        let (original, now) = match storage::peek(&version.of) {
            None => (Original::Gone, None),
            Some(now) if now == version.original => (Original::Same, Some(now)),
            Some(now) => (Original::Changed, Some(now)),
        };
        let before: Inputs = now.filter(|_| !as_it_was).unwrap_or(version.original);
        let own = self.larder.get_untracked();
        let settings = self.settings_now();
        let before = worksheet_again(&mut Looks::default(), &before, &settings, &own);
        Some(Compared {
            difference: self.sheet(|after| difference(&before, after, &version.name)),
            original,
        })
    }

    /// Opens the recipe that the open one was made from.
    pub fn open_original(self) {
        if let Some(of) = self
            .version
            .with_untracked(|it| Some(it.as_ref()?.of.clone()))
        {
            self.open_kept(&of);
        }
    }

    /// Puts the version's copy of its original back on the shelf, under the name that it had there.
    ///
    /// # Errors
    /// A sentence's middle that says why it could not be kept.
    pub fn put_original_back(self) -> Result<(), String> {
        let Some(version) = self.version.get_untracked() else {
            return Ok(());
        };
        let written =
            storage::keep_recipe(&version.of, &version.original, None).map_err(NotKept::reason)?;
        self.keeping.note(written.effort);
        self.version.notify();
        Ok(())
    }

    /// Another window has changed or removed a recipe that is not open here: the one that ours was made from may be it.
    pub(super) fn follow_original(self, id: &str) {
        let is_ours = self
            .version
            .with_untracked(|version| version.as_ref().is_some_and(|version| version.of == id));
        if is_ours {
            self.version.notify();
        }
    }
}

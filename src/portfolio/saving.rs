//! Rows on their way to the disk while more are written, so that little is left to wait for at
//! the end.

use std::fs::File;
use std::io::{Error, Result};
use std::thread::JoinHandle;

/// A file that is saved again and again, on a thread of its own.
#[derive(Default)]
pub(super) struct Saving {
    under_way: Option<JoinHandle<Result<()>>>,
}

impl Saving {
    /// Saves what is written by now, unless an earlier saving is still under way.
    ///
    /// # Errors
    /// The operating system's, where an earlier saving failed. It tells a failure only once, so
    /// that it must not be lost here.
    pub(super) fn go_on(&mut self, file: &File) -> Result<()> {
        if self
            .under_way
            .as_ref()
            .is_some_and(|saving| !saving.is_finished())
        {
            return Ok(());
        }
        self.wait()?;
        let file = file.try_clone()?;
        self.under_way = Some(std::thread::spawn(move || file.sync_data()));
        Ok(())
    }

    /// Waits for the saving that is under way.
    ///
    /// # Errors
    /// The operating system's, where it failed.
    pub(super) fn wait(&mut self) -> Result<()> {
        let ended = |_| Error::other("the thread that saves rows ended early");
        match self.under_way.take() {
            Some(saving) => saving.join().map_err(ended)?,
            None => Ok(()),
        }
    }
}

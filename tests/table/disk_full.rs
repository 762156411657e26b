//! A disk that is full: a message, and nothing under the final name.

use std::fmt::Write;
use std::path::Path;
use std::process::Command;

use sillmark::table::{TableFormat, convert, sort_ranked};

use super::csv;
use super::formats::{columns, points};
use crate::support::skip;

/// A small file system in memory, unmounted at the end.
struct SmallDisk(tempfile::TempDir);

impl SmallDisk {
    fn mount(bytes: usize) -> Option<Self> {
        let folder = tempfile::tempdir().unwrap();
        let mounted = Command::new("mount")
            .args(["-t", "tmpfs", "-o", &format!("size={bytes}"), "tmpfs"])
            .arg(folder.path())
            .output();
        match mounted {
            Ok(output) if output.status.success() => Some(Self(folder)),
            _ => {
                if std::env::var_os("CI").is_none() {
                    skip("a full disk: no right to mount a small one");
                }
                None
            }
        }
    }

    fn path(&self) -> &Path {
        self.0.path()
    }
}

impl Drop for SmallDisk {
    fn drop(&mut self) {
        let _ = Command::new("umount").arg(self.path()).status();
    }
}

#[test]
fn a_full_disk_is_said_and_leaves_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let mut text = "id,x,y,depth_m,planks\n".to_owned();
    for row in 0..60_000_u32 {
        let noise = row.wrapping_mul(2_654_435_761);
        writeln!(text, "r{noise},{row}.5,{row},{noise},{noise}").unwrap();
    }
    let work = csv(&folder, &text);
    // Every one of the files would be larger.
    let Some(disk) = SmallDisk::mount(512 << 10) else {
        return;
    };
    let points = points("EPSG:32618");
    for format in TableFormat::ALL {
        let target = disk.path().join("out").with_extension(format.endings()[0]);
        let points = (format != TableFormat::GeoJson).then_some(&points);
        let outcome = convert(&work, &columns(), points, &target, format, "a", None);
        let error = outcome.unwrap_err().to_string();
        assert!(
            error.starts_with(&target.display().to_string()),
            "{format:?}: {error}"
        );
        assert_eq!(
            std::fs::read_dir(disk.path()).unwrap().count(),
            0,
            "{format:?}: {error}"
        );
    }
    let target = disk.path().join("ranked.csv");
    for memory in [1 << 30, 64 << 10] {
        let error = sort_ranked(&work, "depth_m", true, memory, "rank", &target).unwrap_err();
        assert!(
            error.to_string().contains("writing failed: No space left"),
            "{error}"
        );
        assert_eq!(std::fs::read_dir(disk.path()).unwrap().count(), 0);
    }
}

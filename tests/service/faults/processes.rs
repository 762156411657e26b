//! Several processes over one cache, among faults.

use std::collections::BTreeSet;
use std::path::Path;
use std::process::{Command, Stdio};
use std::sync::Arc;

use sillmark::service::{Answers, Cache, Limits, ServiceError};

use super::asked::{CALM, DISTURBED, features};
use super::{OGC_LAYER, kept};
use crate::service::features::{everywhere, ogc_double};
use crate::service::proxy::{Proxy, Schedule, Upstream};

const ADDRESS: &str = "SILLMARK_TEST_ADDRESS";
const FOLDER: &str = "SILLMARK_TEST_FOLDER";

/// The other processes are this test itself.
#[test]
fn processes_share_a_cache() {
    const NAME: &str = "service::faults::processes::processes_share_a_cache";
    if let (Ok(address), Some(folder)) = (std::env::var(ADDRESS), std::env::var_os(FOLDER)) {
        return ask_again_and_again(&address, Path::new(&folder));
    }
    let folder = tempfile::tempdir().unwrap();
    let server = ogc_double::server(|_| None);
    let proxy = Proxy::start(&Arc::new(Upstream::at(&server.at(""))), Schedule::new(7));
    let address = format!("{}{}", proxy.address(), OGC_LAYER);
    let children: Vec<_> = (0..3)
        .map(|_| {
            Command::new(std::env::current_exe().unwrap())
                .args(["--exact", NAME])
                .env(ADDRESS, &address)
                .env(FOLDER, folder.path())
                .stdout(Stdio::piped())
                .spawn()
                .unwrap()
        })
        .collect();
    for child in children {
        let said = child.wait_with_output().unwrap();
        let text = String::from_utf8_lossy(&said.stdout);
        assert!(said.status.success() && text.contains("1 passed"), "{text}");
    }
    assert!(!proxy.met().is_empty());
    assert!(kept::entries(folder.path()).unwrap() > 0);
    proxy.calm();
    assert_eq!(
        count(&address, folder.path(), CALM).unwrap(),
        ogc_double::COUNT
    );
    kept::entries(folder.path()).unwrap();
}

fn ask_again_and_again(address: &str, folder: &Path) {
    for _ in 0..20 {
        if let Ok(count) = count(address, folder, DISTURBED) {
            assert_eq!(count, ogc_double::COUNT);
        }
    }
}

/// How many different features come.
fn count(address: &str, folder: &Path, limits: Limits) -> Result<usize, ServiceError> {
    let cache = Cache::open(folder).unwrap();
    let layer = features(
        address,
        &[everywhere()],
        Answers::FetchedAndKept(cache),
        limits,
    )?;
    let ids: BTreeSet<String> = layer
        .features
        .into_iter()
        .map(|feature| feature.id)
        .collect();
    Ok(ids.len())
}

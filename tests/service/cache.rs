//! Answers on the disk: whole, damaged, and written by many at once.

use sillmark::service::{Cache, Entry, Request, Validators};

fn request(url: &str) -> Request {
    Request {
        url: reqwest::Url::parse(url).unwrap(),
        form: None,
        accept: "application/json",
        known: Validators::default(),
    }
}

fn entry(bytes: &[u8]) -> Entry {
    Entry {
        address: "https://h/zones?token=…".to_owned(),
        date: "Sun, 06 Nov 1994 08:49:37 GMT".to_owned(), // RFC 9110, section 5.6.7
        validators: Validators {
            etag: Some("\"a\"".to_owned()),
            last_modified: None,
        },
        content_type: Some("text/plain".to_owned()),
        content_crs: Some("<http://www.opengis.net/def/crs/EPSG/0/26910>".to_owned()),
        bytes: bytes.to_owned(),
    }
}

fn files(folder: &std::path::Path) -> Vec<std::path::PathBuf> {
    let entries = std::fs::read_dir(folder).unwrap();
    entries.map(|entry| entry.unwrap().path()).collect()
}

#[test]
fn what_is_kept_is_found_again_by_the_same_request() {
    let folder = tempfile::tempdir().unwrap();
    let cache = Cache::open(&folder.path().join("answers")).unwrap();
    let asked = request("https://h/zones?token=secret");
    assert_eq!(cache.find(&asked), None);
    let kept = entry(b"one\ntwo");
    cache.keep(&asked, &kept).unwrap();
    assert_eq!(cache.find(&asked), Some(kept));
    let mut posted = asked.clone();
    posted.form = Some(vec![("a".to_owned(), "b".to_owned())]);
    for other in [request("https://h/zones"), posted] {
        assert_eq!(cache.find(&other), None);
    }
    // Neither name nor text of the file tells the key.
    let path = files(&folder.path().join("answers")).remove(0);
    let text = std::fs::read_to_string(&path).unwrap();
    assert!(!text.contains("secret") && !path.to_string_lossy().contains("secret"));
}

#[test]
fn a_damaged_entry_is_none() {
    let folder = tempfile::tempdir().unwrap();
    let cache = Cache::open(folder.path()).unwrap();
    let asked = request("https://h/zones");
    let kept = entry(b"[1,2,3]");
    cache.keep(&asked, &kept).unwrap();
    let path = files(folder.path()).remove(0);
    let whole = std::fs::read(&path).unwrap();
    for position in 0..whole.len() {
        let mut damaged = whole.clone();
        damaged[position] ^= 1;
        std::fs::write(&path, damaged).unwrap();
        // What says where the answer is from is no part of the checksum.
        if let Some(entry) = cache.find(&asked) {
            assert_eq!(entry.bytes, b"[1,2,3]");
        }
        std::fs::write(&path, &whole[..position]).unwrap();
        assert_eq!(cache.find(&asked), None, "cut at {position}");
    }
    cache.keep(&asked, &kept).unwrap();
    assert_eq!(cache.find(&asked), Some(kept));
}

#[test]
fn many_at_once_leave_whole_entries() {
    let folder = tempfile::tempdir().unwrap();
    let asked = request("https://h/zones");
    std::thread::scope(|scope| {
        for writer in 0..4_u8 {
            let (folder, asked) = (folder.path(), &asked);
            scope.spawn(move || {
                let cache = Cache::open(folder).unwrap();
                for length in 0..50 {
                    let bytes = vec![b'0' + writer; 1000 * length];
                    cache.keep(asked, &entry(&bytes)).unwrap();
                    let found = cache.find(asked).expect("an entry is there and whole");
                    assert!(found.bytes.windows(2).all(|pair| pair[0] == pair[1]));
                }
            });
        }
    });
    assert_eq!(files(folder.path()).len(), 1);
}

#[test]
fn a_folder_that_takes_no_files_is_told_at_once() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("file");
    std::fs::write(&file, "").unwrap();
    assert!(Cache::open(&file).is_err());
    // It is there, and nobody makes a file in it.
    #[cfg(target_os = "linux")]
    assert!(Cache::open(std::path::Path::new("/proc")).is_err());
}

#[test]
fn what_was_left_unfinished_is_deleted_after_a_day() {
    let folder = tempfile::tempdir().unwrap();
    let day = std::time::Duration::from_hours(24);
    for (name, hours) in [(".tmpold", 25), (".tmpnew", 23), ("kept", 25)] {
        let file = std::fs::File::create(folder.path().join(name)).unwrap();
        let time = std::time::SystemTime::now() - day / 24 * hours;
        file.set_modified(time).unwrap();
    }
    Cache::open(folder.path()).unwrap();
    let mut left = files(folder.path());
    left.sort();
    assert_eq!(
        left,
        [".tmpnew", "kept"].map(|name| folder.path().join(name))
    );
}

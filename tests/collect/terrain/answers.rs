//! What a server answers instead of a part, and what is said of it.

use super::fixture::{collect, usual};
use super::server::{Manner, Server};
use crate::terrain::fixture::place;

/// What becomes of a file that is given in some manner: a crop, or a message.
fn outcome(manner: Manner) -> Result<(), String> {
    let folder = tempfile::tempdir().unwrap();
    let server = Server::start(std::fs::read(usual(folder.path())).unwrap(), manner);
    let crops = folder.path().join("crops");
    std::fs::create_dir(&crops).unwrap();
    let collected = collect(&server, &[place(3500.0, -2600.0)], 400.0, &crops);
    let left = std::fs::read_dir(&crops).unwrap().count();
    match collected {
        Ok(collected) => {
            assert!(collected.file.is_some() && left == 1);
            Ok(())
        }
        Err(error) => {
            assert_eq!(left, 0, "{manner:?} leaves something behind");
            Err(server.said(&error))
        }
    }
}

#[test]
fn parts_are_put_together_whatever_they_are_known_by() {
    for manner in [Manner::Well, Manner::Dated, Manner::Nameless, Manner::Weak] {
        assert_eq!(outcome(manner), Ok(()), "{manner:?}");
    }
}

#[test]
fn a_server_without_parts_is_told_so_and_not_read() {
    // The body is a hundred gigabytes, and never comes.
    assert_eq!(
        outcome(Manner::Whole).unwrap_err(),
        "ADDRESS: the server gives no parts of a file (it answers 200 OK to a range of bytes); \
         accepted: a server that does, or the file itself: download it and name it by its path"
    );
}

#[test]
fn another_part_is_refused() {
    let said = outcome(Manner::Beside).unwrap_err();
    let start = "ADDRESS: asked for bytes 0 to 65535, the server sends \"bytes 1-65536/";
    assert!(said.starts_with(start), "{said}");
    assert_eq!(
        outcome(Manner::Unsaid).unwrap_err(),
        "ADDRESS: asked for bytes 0 to 65535, the server sends a part without saying which"
    );
    let said = outcome(Manner::UnknownLength).unwrap_err();
    assert!(
        said.ends_with("the server sends \"bytes 0-65535/*\""),
        "{said}"
    );
    let said = outcome(Manner::Longer).unwrap_err();
    assert!(
        said.ends_with("the server sends \"bytes 0-65535/65535\""),
        "{said}"
    );
}

#[test]
fn a_file_that_changes_is_given_up() {
    for manner in [Manner::Replaced, Manner::OtherTag] {
        assert_eq!(
            outcome(manner).unwrap_err(),
            "ADDRESS: the file changed while it was read; read it again",
            "{manner:?}"
        );
    }
}

#[test]
fn a_part_that_ends_early_is_no_part() {
    let said = outcome(Manner::Cut).unwrap_err();
    assert!(
        said.starts_with("ADDRESS: ") && said.ends_with("(tried 2 times)"),
        "{said}"
    );
    assert_eq!(
        outcome(Manner::Half).unwrap_err(),
        "ADDRESS: asked for 65536 bytes from 0 on, the server sends 32768"
    );
}

#[test]
fn a_refusal_is_told() {
    assert_eq!(
        outcome(Manner::NotSatisfiable).unwrap_err(),
        "ADDRESS: the server answers 416 Range Not Satisfiable"
    );
    assert_eq!(
        outcome(Manner::Missing).unwrap_err(),
        "ADDRESS: the server answers 404 Not Found: no such model"
    );
}

//! Addresses: what is one, what is refused, what is hidden.

use sillmark::service::{Address, is_private};
use sillmark::statement::{Place, Stated};

fn read(text: &str) -> Result<String, String> {
    let stated = Stated::new("zones", text, Place::Option("option --zones".into()));
    let address = Address::read(&stated).map_err(|error| error.to_string())?;
    Ok(address.to_string())
}

#[test]
fn keys_are_hidden() {
    for (text, shown) in [
        ("http://h/a?b=1&TOKEN=x%20y&c", "http://h/a?b=1&TOKEN=…&c"),
        (
            "https://h/a?subscription-key=1#f",
            "https://h/a?subscription-key=…",
        ),
        ("https://h:8443/a", "https://h:8443/a"),
    ] {
        assert_eq!(read(text).unwrap(), shown);
    }
}

#[test]
fn what_is_no_address_of_a_service_is_refused() {
    for (text, problem) in [
        ("ftp://h/a", "neither http nor https"),
        ("file:///etc/passwd", "neither http nor https"),
        ("http://", "no address"),
        ("zones.gpkg", "no address"),
    ] {
        let message = read(text).unwrap_err();
        assert!(
            message.contains(problem) && message.contains("accepted: "),
            "{message}"
        );
    }
}

#[test]
fn a_password_is_refused_and_not_repeated() {
    for text in [
        "https://me:secret@h/a",
        "https://me@h/a",
        "ftp://me:secret@h/a",
    ] {
        let message = read(text).unwrap_err();
        assert!(message.contains("user's name or password"), "{message}");
        assert!(
            !message.contains("secret") && !message.contains("me@"),
            "{message}"
        );
    }
}

/// The special-purpose registries of the IANA (RFC 6890), as far as a host can be reached there
/// from one network alone, and the addresses just outside.
#[test]
fn networks_of_ones_own() {
    for inside in [
        "127.0.0.1",
        "127.255.255.254",
        "10.0.0.0",
        "10.255.255.255",
        "172.16.0.0",
        "172.31.255.255",
        "192.168.0.0",
        "192.168.255.255",
        "169.254.169.254",
        "100.64.0.0",
        "100.127.255.255",
        "0.0.0.0",
        "0.1.2.3",
        "224.0.0.1",
        "255.255.255.255",
        "::1",
        "::",
        "fc00::1",
        "fdff::1",
        "fe80::1",
        "febf::1",
        "ff02::1",
        "::ffff:127.0.0.1",
    ] {
        assert!(is_private(inside.parse().unwrap()), "{inside}");
    }
    for outside in [
        "126.255.255.255",
        "128.0.0.1",
        "9.255.255.255",
        "11.0.0.0",
        "172.15.255.255",
        "172.32.0.0",
        "192.167.255.255",
        "192.169.0.0",
        "169.253.0.1",
        "100.63.255.255",
        "100.128.0.0",
        "1.0.0.0",
        "2001:4860::1",
        "fec0::1",
        "fbff::1",
        "::ffff:8.8.8.8",
    ] {
        assert!(!is_private(outside.parse().unwrap()), "{outside}");
    }
}

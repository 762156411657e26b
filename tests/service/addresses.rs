//! Addresses: what is one, what is refused, what is hidden.

use sillmark::service::{Address, LayerAddress, is_private};
use sillmark::statement::{Place, Stated};

fn read(text: &str) -> Result<String, String> {
    let stated = Stated::new("zones", text, Place::Option("option --zones".into()));
    let address = Address::read(&stated).map_err(|error| error.to_string())?;
    Ok(address.to_string())
}

pub(super) fn read_layer(text: &str) -> Result<(String, Option<String>), String> {
    let stated = Stated::new("zones", text, Place::Option("option --zones".into()));
    let read = LayerAddress::read(&stated).map_err(|error| error.to_string())?;
    Ok((read.address.url().to_string(), read.layer))
}

#[test]
fn a_layer_stands_behind_a_hash_or_a_colon() {
    for (text, address, layer) in [
        ("https://h/ogc", "https://h/ogc", None),
        ("https://h/ogc#zones", "https://h/ogc", Some("zones")),
        (
            " https://h/o?a=1#1% A: b ",
            "https://h/o?a=1",
            Some("1% A: b"),
        ),
        (
            "https://h/o#Flood%20Hazard%20Zones",
            "https://h/o",
            Some("Flood Hazard Zones"),
        ),
        ("https://h/o#a%C3%A4%", "https://h/o", Some("a\u{e4}%")),
        ("https://h/o#a%E4", "https://h/o", Some("a%E4")),
        ("https://h:81/o", "https://h:81/o", None),
        (
            "https://h/x/FeatureServer:28",
            "https://h/x/FeatureServer",
            Some("28"),
        ),
        (
            "https://h/x/mapserver:A B?f=1",
            "https://h/x/mapserver?f=1",
            Some("A B"),
        ),
        (
            "https://h/x/MapServer/3#a",
            "https://h/x/MapServer/3",
            Some("a"),
        ),
        ("https://h/ogc:zones", "https://h/ogc:zones", None),
        (
            "https://h/o?u=/MapServer:3",
            "https://h/o?u=/MapServer:3",
            None,
        ),
    ] {
        let expected = (address.to_owned(), layer.map(str::to_owned));
        assert_eq!(read_layer(text), Ok(expected), "{text}");
    }
}

#[test]
fn a_layer_without_a_name_is_refused_and_no_key_is_shown() {
    for (text, problem) in [
        ("https://h/o?token=secret#", "blank"),
        ("https://h/o?token=secret# ", "blank"),
        ("https://h/FeatureServer:?token=secret", "blank"),
        (
            "https://h/FeatureServer:a?token=secret#b",
            "a colon and behind a #",
        ),
        ("#zones", "no address"),
        ("https://#zones", "no address"),
    ] {
        let message = read_layer(text).unwrap_err();
        assert!(
            message.contains(problem) && message.contains("accepted: "),
            "{message}"
        );
        assert!(!message.contains("secret"), "{message}");
    }
}

proptest::proptest! {
    #[test]
    fn any_text_is_read_or_refused(text in "(https?://)?[a-z.:/?#%é\\PC]{0,12}(/(Feature|map)Server)?[:#]?\\PC{0,8}") {
        if let Ok((address, layer)) = read_layer(&text) {
            assert!(!address.contains('#'), "{text}: {address}");
            assert_ne!(layer.as_deref().map(str::trim), Some(""), "{text}");
        }
    }
}

#[test]
fn keys_are_hidden() {
    for (text, shown) in [
        (
            "http://h/a?bbox=1&TOKEN=x%20y&c&f=json&SIG=1&X-Amz-Signature=2&code=&resultOffset=3",
            "http://h/a?bbox=1&TOKEN=…&…&f=json&SIG=…&X-Amz-Signature=…&code=&resultOffset=3",
        ),
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
        "fec0::1",
        "feff::1",
        "192.0.0.1",
        "198.18.0.0",
        "198.19.255.255",
        "240.0.0.1",
        "::ffff:127.0.0.1",
        "::10.0.0.7",
        "64:ff9b::10.0.0.7",
        "64:ff9b::169.254.169.254",
        "64:ff9b:1::8.8.8.8",
        "2002:a00:7::1",
        "2002:7f00:1::",
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
        "191.255.255.255",
        "192.0.1.0",
        "192.0.2.1",
        "198.17.255.255",
        "198.20.0.0",
        "223.255.255.255",
        "fbff::1",
        "2001:db8::1",
        "::ffff:8.8.8.8",
        "::8.8.8.8",
        "64:ff9b::8.8.8.8",
        "64:ff9b:2::1",
        "2002:808:808::1",
    ] {
        assert!(!is_private(outside.parse().unwrap()), "{outside}");
    }
}

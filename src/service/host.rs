//! Which addresses belong to a network of one's own.

use std::net::{IpAddr, Ipv4Addr, Ipv6Addr};

use reqwest::Url;

/// Whether an address is reached from this machine or its own network alone: loopback, private
/// (RFC 1918, RFC 4193), link-local (RFC 3927, RFC 4291), shared (RFC 6598), and what is no
/// address of a host (unspecified, multicast, broadcast, RFC 1122 and RFC 5771).
///
/// ```
/// use sillmark::service::is_private;
/// assert!(is_private("127.0.0.1".parse()?));
/// assert!(is_private("::ffff:10.0.0.7".parse()?)); // IPv4 in IPv6's clothes
/// assert!(!is_private("93.184.215.14".parse()?));
/// # Ok::<(), std::net::AddrParseError>(())
/// ```
#[must_use]
pub fn is_private(address: IpAddr) -> bool {
    match address {
        IpAddr::V4(address) => is_private_v4(address),
        IpAddr::V6(address) => is_private_v6(address),
    }
}

fn is_private_v4(address: Ipv4Addr) -> bool {
    let [first, second, ..] = address.octets();
    address.is_loopback()
        || address.is_private()
        || address.is_link_local()
        || address.is_multicast()
        || address.is_broadcast()
        || first == 0
        || (first == 100 && (64..128).contains(&second))
}

fn is_private_v6(address: Ipv6Addr) -> bool {
    if let Some(inner) = address.to_ipv4_mapped() {
        return is_private_v4(inner);
    }
    address.is_loopback()
        || address.is_unspecified()
        || address.is_multicast()
        || address.is_unique_local()
        || address.is_unicast_link_local()
}

/// The address that stands in a URL in place of a name.
pub(super) fn literal(url: &Url) -> Option<IpAddr> {
    let host = url.host_str()?;
    let bare = host
        .strip_prefix('[')
        .and_then(|host| host.strip_suffix(']'));
    bare.unwrap_or(host).parse().ok()
}

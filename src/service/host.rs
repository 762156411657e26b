//! Which addresses belong to a network of one's own.

use std::net::{IpAddr, Ipv4Addr, Ipv6Addr};

use reqwest::Url;

/// Whether an address is reached from this machine or its own network alone: loopback, private
/// (RFC 1918, RFC 4193), link-local (RFC 3927, RFC 4291), site-local (RFC 3879), shared
/// (RFC 6598), for protocols (RFC 6890), for trials of networks (RFC 2544), reserved (RFC 1112),
/// and what is no address of a host (unspecified, multicast, broadcast, RFC 1122 and RFC 5771).
/// An address of IPv6 that carries one of IPv4 is as private as that one: mapped or compatible
/// (RFC 4291), translated (RFC 6052; all of the local range of RFC 8215), or 6to4 (RFC 3056).
/// Addresses for documentation (RFC 5737, RFC 3849) count as public.
///
/// ```
/// use sillmark::service::is_private;
/// assert!(is_private("127.0.0.1".parse()?));
/// assert!(is_private("::ffff:10.0.0.7".parse()?)); // IPv4 in IPv6's clothes
/// assert!(is_private("64:ff9b::10.0.0.7".parse()?));
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
    let [first, second, third, _] = address.octets();
    address.is_loopback()
        || address.is_private()
        || address.is_link_local()
        || address.is_multicast()
        || address.is_broadcast()
        || first == 0
        || first >= 240
        || (first == 100 && (64..128).contains(&second))
        || (first, second, third) == (192, 0, 0)
        || (first == 198 && (18..20).contains(&second))
}

fn is_private_v6(address: Ipv6Addr) -> bool {
    if let Some(inner) = carried(address) {
        return is_private_v4(inner);
    }
    let segments = address.segments();
    address.is_loopback()
        || address.is_unspecified()
        || address.is_multicast()
        || address.is_unique_local()
        || address.is_unicast_link_local()
        || segments[0] & 0xffc0 == 0xfec0
        || segments[..3] == [0x64, 0xff9b, 1]
}

/// The address of IPv4 inside one of IPv6.
fn carried(address: Ipv6Addr) -> Option<Ipv4Addr> {
    let of = |high: u16, low: u16| {
        let ([first, second], [third, fourth]) = (high.to_be_bytes(), low.to_be_bytes());
        Ipv4Addr::new(first, second, third, fourth)
    };
    match address.segments() {
        [0, 0, 0, 0, 0, 0 | 0xffff, high, low] | [0x64, 0xff9b, 0, 0, 0, 0, high, low] => {
            Some(of(high, low))
        }
        [0x2002, high, low, ..] => Some(of(high, low)),
        _ => None,
    }
}

/// The address that stands in a URL in place of a name.
pub(super) fn literal(url: &Url) -> Option<IpAddr> {
    let host = url.host_str()?;
    let bare = host
        .strip_prefix('[')
        .and_then(|host| host.strip_suffix(']'));
    bare.unwrap_or(host).parse().ok()
}

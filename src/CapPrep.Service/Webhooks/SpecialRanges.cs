using System.Net;
using System.Net.Sockets;

namespace CapPrep.Service.Webhooks;

/// <summary>
/// Addresses that are not on the public internet, so that no webhook goes there unasked. Source of the rows: the
/// IANA special-purpose address registries for IPv4 and IPv6 (RFC 6890 and its updates) and the multicast blocks
/// (RFC 5771, RFC 4291); the cloud platform's agent address is from memory.
/// </summary>
internal static class SpecialRanges
{
    private static readonly IPNetwork[] ForbiddenV4 =
    [
        IPNetwork.Parse("0.0.0.0/8"),           // this network
        IPNetwork.Parse("10.0.0.0/8"),          // private
        IPNetwork.Parse("100.64.0.0/10"),       // shared by carriers
        IPNetwork.Parse("127.0.0.0/8"),         // loopback
        IPNetwork.Parse("168.63.129.16/32"),    // a cloud platform's agent
        IPNetwork.Parse("169.254.0.0/16"),      // link-local, instance metadata
        IPNetwork.Parse("172.16.0.0/12"),       // private
        IPNetwork.Parse("192.0.0.0/24"),        // protocol assignments
        IPNetwork.Parse("192.0.2.0/24"),        // documentation
        IPNetwork.Parse("192.88.99.0/24"),      // 6to4 relays
        IPNetwork.Parse("192.168.0.0/16"),      // private
        IPNetwork.Parse("198.18.0.0/15"),       // benchmarking
        IPNetwork.Parse("198.51.100.0/24"),     // documentation
        IPNetwork.Parse("203.0.113.0/24"),      // documentation
        IPNetwork.Parse("224.0.0.0/4"),         // multicast
        IPNetwork.Parse("240.0.0.0/4"),         // reserved, broadcast
    ];

    /// <summary>Everything outside it, such as fc00::/7, fe80::/10 or 64:ff9b::/96, is forbidden as a whole.</summary>
    private static readonly IPNetwork GlobalUnicastV6 = IPNetwork.Parse("2000::/3");

    private static readonly IPNetwork[] ForbiddenV6 =
    [
        IPNetwork.Parse("2001::/23"),           // protocol assignments, Teredo, benchmarking, hash identifiers
        IPNetwork.Parse("2001:db8::/32"),       // documentation
        IPNetwork.Parse("2002::/16"),           // 6to4
        IPNetwork.Parse("3fff::/20"),           // documentation
    ];

    /// <summary>True unless the address is one of the public internet. IPv4-mapped addresses count as IPv4.</summary>
    public static bool Holds(IPAddress address)
    {
        var plain = Unmapped(address);
        return plain.AddressFamily switch
        {
            AddressFamily.InterNetwork => ForbiddenV4.Any(range => range.Contains(plain)),
            AddressFamily.InterNetworkV6 => !GlobalUnicastV6.Contains(plain) || ForbiddenV6.Any(range => range.Contains(plain)),
            _ => true,
        };
    }

    public static IPAddress Unmapped(IPAddress address) =>
        address.IsIPv4MappedToIPv6 ? address.MapToIPv4() : address;
}

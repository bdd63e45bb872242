using System.Net;
using CapPrep.Service.Plumbing;

namespace CapPrep.Service.Webhooks;

/// <summary>
/// Decides which addresses may be called. It judges address objects, never the text of an address: at registration
/// an address that stands in the URL, at every call all addresses that the name has at that moment.
/// </summary>
internal sealed class AddressGuard(Settings settings)
{
    private const string Remedy = "the operator lists networks of the shop in CapPrep:Webhooks:AllowedNetworks.";

    private readonly IReadOnlyList<AllowedNetwork> _allowed = settings.Webhooks.AllowedNetworks;

    /// <summary>
    /// True when the address may be called: a public one by https, or one of the operator's networks.
    /// </summary>
    /// <param name="encrypted">Whether the call is https.</param>
    public bool Admits(IPAddress address, int port, bool encrypted)
    {
        var plain = SpecialRanges.Unmapped(address);
        return _allowed.Any(network => network.Admits(plain, port)) || (encrypted && !SpecialRanges.Holds(plain));
    }

    /// <summary>What is wrong with the address in a URL before anybody calls it; null: nothing that shows yet.</summary>
    public string? Judge(Uri url)
    {
        var encrypted = url.Scheme == Uri.UriSchemeHttps;
        if (Literal(url) is { } address)
        {
            return Admits(address, url.Port, encrypted)
                ? null
                : $"{(encrypted ? "" : "Plain http to ")}{address} is not allowed here; {Remedy}";
        }

        return encrypted || _allowed.Count > 0
            ? null
            : $"Plain http is not allowed here; {Remedy}";
    }

    /// <summary>
    /// The addresses to connect to, in the resolver's order; empty when one of them may not be called, since a name
    /// that has one such address is a trick or a mistake.
    /// </summary>
    public IReadOnlyList<IPAddress> Choose(IReadOnlyList<IPAddress> answers, int port, bool encrypted) =>
        answers.All(address => Admits(address, port, encrypted))
            ? [.. answers.Select(SpecialRanges.Unmapped)]
            : [];

    // The host as it is called: a full stop at its end means nothing, and wide forms of the full stop are full stops.
    private static IPAddress? Literal(Uri url) =>
        IPAddress.TryParse(url.IdnHost.TrimEnd('.'), out var address) ? address : null;
}

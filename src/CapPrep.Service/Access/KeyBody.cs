using System.Globalization;
using CapPrep.Engine.Reading;
using CapPrep.Service.Calls;

namespace CapPrep.Service.Access;

/// <summary>A key as it was asked for.</summary>
/// <param name="Shop">Null: the caller's.</param>
internal sealed record KeyBody(string Name, string? Shop, IReadOnlyList<string> Scopes, DateTimeOffset? Expires);

/// <summary>Reads the body of POST /v1/keys, with every fault.</summary>
internal static class KeyReader
{
    private const int LongestName = 60;

    private static readonly string[] TimeForms = ["yyyy-MM-dd'T'HH:mm:ss.FFFFFFF'Z'", "yyyy-MM-dd'T'HH:mm:ss.FFFFFFFzzz"];

    public static ReadResult<KeyBody> Read(ReadOnlyMemory<byte> utf8, DateTimeOffset now) =>
        JsonBody.Read(utf8, new Faults(SmallBody.Part, "A key"), body => Read(body, now));

    private static KeyBody? Read(ObjectReader body, DateTimeOffset now)
    {
        body.Require("name", "scopes");
        var name = body.Text("name", LongestName);
        var shop = body.Id("shop");
        var scopes = body.Items("scopes", 1, Scopes.All.Count, (element, pointer) => Scope(body, element, pointer));
        var expires = Expires(body, now);
        return name is null || scopes is null ? null : new KeyBody(name, shop, scopes, expires);
    }

    private static string? Scope(ObjectReader body, System.Text.Json.JsonElement element, string pointer)
    {
        if (body.TextOf(element, pointer, 20) is not { } scope)
            return null;
        if (Scopes.All.Contains(scope))
            return scope;
        body.Faults.NotAllowed(pointer, ViolationCodes.UnknownId, $"There is no scope '{scope}'.", Scopes.All);
        return null;
    }

    private static DateTimeOffset? Expires(ObjectReader body, DateTimeOffset now)
    {
        if (body.Text("expires", 40) is not { } text)
            return null;
        if (!DateTimeOffset.TryParseExact(text, TimeForms, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var expires))
            body.Faults.Add(body.PointerTo("expires"), ViolationCodes.BadFormat, "A time is written as in 2027-11-25T08:00:00Z.");
        else if (expires <= now)
            body.Faults.Add(body.PointerTo("expires"), ViolationCodes.Contradicts, "This time has passed.");
        else
            return expires;
        return null;
    }
}

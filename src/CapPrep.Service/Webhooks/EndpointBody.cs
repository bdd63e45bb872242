using System.Text.Json;
using CapPrep.Engine.Reading;
using CapPrep.Service.Calls;
using CapPrep.Service.Events;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage.Rows;

namespace CapPrep.Service.Webhooks;

/// <summary>What a person asks of an endpoint.</summary>
internal enum SwitchWord
{
    On,
    Off,
}

/// <summary>An endpoint as it was sent.</summary>
/// <param name="Types">Sorted, each once.</param>
/// <param name="State">Null: as it is.</param>
internal sealed record EndpointBody(Uri Url, IReadOnlyList<string> Types, string? Note, SwitchWord? State);

/// <summary>Reads the bodies that add and change endpoints, with every fault.</summary>
internal static class EndpointReader
{
    private const int LongestUrl = 2048;
    private const int LongestNote = 200;

    /// <summary>The body of a POST.</summary>
    public static ReadResult<EndpointBody> Read(ReadOnlyMemory<byte> utf8) =>
        JsonBody.Read(utf8, NewFaults(), body => Read(body, withState: false));

    /// <summary>
    /// The body of a PATCH, a JSON merge patch (RFC 7396): members it names replace those of the endpoint, a null
    /// takes the note away.
    /// </summary>
    public static ReadResult<EndpointBody> ReadPatch(ReadOnlyMemory<byte> utf8, EndpointRow row)
    {
        var alone = JsonBody.Read(utf8, NewFaults(), body => body);
        var broken = alone.Violations.Where(violation => violation.ByteOffset is not null || violation.Pointer is "").ToArray();
        return broken.Length > 0
            ? ReadResult<EndpointBody>.Refused(broken)
            : JsonBody.Read(Merged(utf8, row), NewFaults(), body => Read(body, withState: true));
    }

    private static Faults NewFaults() => new(SmallBody.Part, "A webhook endpoint");

    private static EndpointBody? Read(ObjectReader body, bool withState)
    {
        body.Require("url", "types");
        var url = ReadUrl(body);
        var types = ReadTypes(body);
        var note = body.Text("note", LongestNote);
        var state = withState ? body.Choice("state", Words<SwitchWord>.Standard) : null;
        return url is null || types is null ? null : new EndpointBody(url, types, note, state);
    }

    private static Uri? ReadUrl(ObjectReader body)
    {
        if (body.Text("url", LongestUrl) is not { } text)
            return null;
        if (Uri.TryCreate(text, UriKind.Absolute, out var url) && Fault(url) is not { } fault)
            return url;
        body.Faults.Add(body.PointerTo("url"), ViolationCodes.BadFormat, url is null ? "An absolute https address is needed." : Fault(url)!);
        return null;
    }

    private static string? Fault(Uri url) => url switch
    {
        { Scheme: not ("https" or "http") } => "An absolute https address is needed.",
        { Host.Length: 0 } or { Port: 0 } => "The address names no host to call.",
        { UserInfo.Length: > 0 } => "The address must hold no user name and no password.",
        { Fragment.Length: > 0 } => "The address must hold no fragment.",
        _ => null,
    };

    private static IReadOnlyList<string>? ReadTypes(ObjectReader body)
    {
        var types = body.Items("types", 1, EventTypes.All.Count, (element, pointer) =>
        {
            var type = body.TextOf(element, pointer, 60);
            if (type is null || EventTypes.All.Contains(type))
                return type;
            body.Faults.NotAllowed(pointer, ViolationCodes.UnknownId, $"There is no event type '{type}' to subscribe to.", EventTypes.All);
            return null;
        });
        return types is null ? null : [.. types.Distinct().Order(StringComparer.Ordinal)];
    }

    private static byte[] Merged(ReadOnlyMemory<byte> patch, EndpointRow row)
    {
        using var document = JsonDocument.Parse(JsonBody.WithoutMark(patch));
        var named = document.RootElement.EnumerateObject().Select(member => member.Name).ToArray();
        return Json.Bytes(writer =>
        {
            writer.WriteStartObject();
            if (!named.Contains("url"))
                writer.WriteString("url", row.Url);
            if (!named.Contains("types"))
                writer.WriteWords("types", EndpointTypes.Of(row));
            if (!named.Contains("note") && row.Note is { } note)
                writer.WriteString("note", note);
            foreach (var member in document.RootElement.EnumerateObject())
            {
                if (member is { Name: "note", Value.ValueKind: JsonValueKind.Null })
                    continue;
                writer.WritePropertyName(member.Name);
                writer.WriteRawValue(member.Value.GetRawText());
            }

            writer.WriteEndObject();
        });
    }
}

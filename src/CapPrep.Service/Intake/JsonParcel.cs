using System.Runtime.InteropServices;
using System.Text.Json;
using CapPrep.Engine.Reading;
using CapPrep.Service.Plumbing;

namespace CapPrep.Service.Intake;

/// <summary>Reads <c>{"ticket":{...},"tape":"base64"}</c>; the ticket is kept byte for byte for its own reader.</summary>
internal static class JsonParcel
{
    public static ParcelReading Read(byte[] body)
    {
        var result = JsonBody.Read(body, new Faults("body", "A request"), Parcel);
        return result.Succeeded
            ? new(result.Value, null)
            : ParcelReading.Refused(Problems.RequestMalformed, Refusal.Counted(result.Violations, "request"), result.Violations);
    }

    private static Parcel? Parcel(ObjectReader reader)
    {
        reader.Require("ticket", "tape");
        var ticket = reader.Element("ticket");
        var tape = reader.Element("tape") is { } element ? Tape(reader, element) : null;
        return ticket is { } value && tape is not null ? new Parcel(JsonMarshal.GetRawUtf8Value(value).ToArray(), tape, null) : null;
    }

    private static byte[]? Tape(ObjectReader reader, JsonElement element)
    {
        if (element.ValueKind == JsonValueKind.String && Decoded(element) is { } bytes)
            return bytes;
        reader.Faults.Add(reader.PointerTo("tape"), ViolationCodes.BadFormat, "The tape is a text of base64 (RFC 4648, section 4), without line breaks.");
        return null;
    }

    /// <summary>Null for what is no base64, half of a surrogate pair included.</summary>
    private static byte[]? Decoded(JsonElement text)
    {
        try
        {
            return text.TryGetBytesFromBase64(out var bytes) ? bytes : null;
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }
}

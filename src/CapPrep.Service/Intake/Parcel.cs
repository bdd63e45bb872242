using System.Globalization;
using CapPrep.Engine.Reading;
using CapPrep.Service.Calls;
using CapPrep.Service.Plumbing;

namespace CapPrep.Service.Intake;

/// <summary>What one request brings: a ticket and a tape, both unread.</summary>
/// <param name="FileName">Name the tape came under, to be shown; never a path. Null: none was given.</param>
internal sealed record Parcel(byte[] Ticket, byte[] Tape, string? FileName);

/// <summary>A parcel, or why the request holds none.</summary>
internal sealed record ParcelReading(Parcel? Parcel, Refusal? Refusal)
{
    public static ParcelReading Refused(Problem problem, string detail, IReadOnlyList<Violation> violations) =>
        new(null, new Refusal(problem, detail) { Violations = violations });
}

/// <summary>Takes the parcel out of a request, whichever of the two forms it has.</summary>
internal static class ParcelReader
{
    // Boundaries, part headers, braces and names.
    private const int Wrapping = 16 * 1024;

    public static async Task<ParcelReading> Read(HttpRequest request, UploadSettings uploads, CancellationToken cancel)
    {
        var isMultipart = MultipartParcel.Admits(request.ContentType);
        if (!isMultipart && !request.HasJsonContentType())
            return new(null, new Refusal(Problems.MediaTypeUnknown, $"This address reads {MultipartParcel.ContentType} and {Json.ContentType}."));
        var body = await RequestBody.Read(request, MostBytes(uploads, isMultipart), cancel);
        if (body.Refusal is not null)
            return new(null, body.Refusal);
        var reading = isMultipart ? await MultipartParcel.Read(request.ContentType!, body.Bytes, cancel) : JsonParcel.Read(body.Bytes);
        return reading.Parcel is { } parcel && TooLarge(parcel, uploads) is { } refusal ? new(null, refusal) : reading;
    }

    /// <summary>Four characters of base64 stand for three bytes.</summary>
    private static long MostBytes(UploadSettings uploads, bool isMultipart) =>
        (isMultipart ? uploads.MaxTapeBytes : ((uploads.MaxTapeBytes + 2L) / 3 * 4)) + uploads.MaxTicketBytes + Wrapping;

    private static Refusal? TooLarge(Parcel parcel, UploadSettings uploads)
    {
        if (parcel.Tape.Length > uploads.MaxTapeBytes)
            return TooLarge(Problems.TapeTooLarge, "tape", parcel.Tape.Length, uploads.MaxTapeBytes);
        return parcel.Ticket.Length > uploads.MaxTicketBytes
            ? TooLarge(Problems.TicketTooLarge, "ticket", parcel.Ticket.Length, uploads.MaxTicketBytes)
            : null;
    }

    private static Refusal TooLarge(Problem problem, string noun, int length, int most) =>
        new(problem, string.Create(CultureInfo.InvariantCulture, $"The {noun} has {length} bytes; at most {most} are read."));
}

using CapPrep.Engine.Reading;
using CapPrep.Service.Plumbing;
using Microsoft.AspNetCore.WebUtilities;
using Microsoft.Net.Http.Headers;

namespace CapPrep.Service.Intake;

/// <summary>
/// Reads multipart/form-data (RFC 7578) of exactly the parts <c>ticket</c> and <c>tape</c>, in any order, each once.
/// </summary>
internal sealed class MultipartParcel
{
    public const string ContentType = "multipart/form-data";

    private const string Ticket = "ticket";
    private const string Tape = "tape";
    private const int MostParts = 16;
    private const int LongestBoundary = 70;

    private readonly Faults _faults = new("body", "A request");
    private byte[]? _ticket;
    private byte[]? _tape;
    private string? _fileName;

    public static bool Admits(string? contentType) =>
        MediaTypeHeaderValue.TryParse(contentType, out var type)
        && type.MediaType.Equals(ContentType, StringComparison.OrdinalIgnoreCase);

    public static async Task<ParcelReading> Read(string contentType, byte[] body, CancellationToken cancel)
    {
        var parts = new MultipartParcel();
        var boundary = HeaderUtilities.RemoveQuotes(MediaTypeHeaderValue.Parse(contentType).Boundary).Value;
        if (string.IsNullOrEmpty(boundary) || boundary.Length > LongestBoundary)
            parts.Fault(ViolationCodes.BadFormat, "The content type names no boundary of 1 to 70 characters.");
        else
            await parts.ReadAll(boundary, body, cancel);
        return parts.Close();
    }

    private async Task ReadAll(string boundary, byte[] body, CancellationToken cancel)
    {
        var reader = new MultipartReader(boundary, new MemoryStream(body));
        try
        {
            for (var count = 0; await reader.ReadNextSectionAsync(cancel) is { } section; count++)
            {
                if (count == MostParts)
                {
                    Fault(ViolationCodes.TooLong, "There are more parts than are looked at.");
                    return;
                }

                await Take(section, cancel);
            }
        }
        catch (Exception fault) when (fault is IOException or InvalidDataException or NotSupportedException)
        {
            Fault(ViolationCodes.BadFormat, "The parts end without their closing boundary, or a part's headers cannot be read.");
        }
    }

    private async Task Take(MultipartSection section, CancellationToken cancel)
    {
        var disposition = section.GetContentDispositionHeader();
        using var bytes = new MemoryStream();
        await section.Body.CopyToAsync(bytes, cancel);
        switch (HeaderUtilities.RemoveQuotes(disposition?.Name ?? default).Value)
        {
            case Ticket:
                Once(Ticket, ref _ticket, bytes.ToArray());
                break;
            case Tape:
                Once(Tape, ref _tape, bytes.ToArray());
                _fileName = FileName.Of(disposition!);
                break;
            default:
                _faults.Add(new Violation("body", ViolationCodes.UnknownField, "There is a part of another name, or of none.") { Allowed = [Tape, Ticket] });
                break;
        }
    }

    private void Once(string name, ref byte[]? place, byte[] bytes)
    {
        if (place is not null)
            Fault(ViolationCodes.DuplicateField, $"The part '{name}' stands more than once.");
        place = bytes;
    }

    private ParcelReading Close()
    {
        if (_ticket is not null && _tape is not null && !_faults.Any)
            return new(new Parcel(_ticket, _tape, _fileName), null);
        if (_ticket is null)
            Fault(ViolationCodes.Required, $"There is no part '{Ticket}'.");
        if (_tape is null)
            Fault(ViolationCodes.Required, $"There is no part '{Tape}'.");
        var sentences = _faults.Violations.Select(fault => fault.Message).Distinct();
        return ParcelReading.Refused(Problems.MultipartInvalid, string.Join(' ', sentences), _faults.Violations);
    }

    private void Fault(string code, string message) => _faults.Add(new Violation("body", code, message));
}

using System.Text.Json;
using CapPrep.Engine.Checks;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Revisions;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;
using CapPrep.Service.Jobs;
using CapPrep.Service.Storage;
using CapPrep.Service.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace CapPrep.Service.Bench;

/// <summary>Reads again what the job before was: its tape, and what was open then.</summary>
internal sealed class EarlierRevision(AppDb db, DocumentStore documents)
{
    private static readonly string Open = Words<FindingState>.Standard.Of(FindingState.Open);

    /// <summary>Null: this is the first of its line, or the one before was erased meanwhile.</summary>
    /// <param name="trimJumps">Of the machine that this job is for.</param>
    public async Task<EarlierJob?> Of(JobRow job, int trimJumps, CancellationToken cancel)
    {
        if (JobInputs.Read(job.Inputs).Earlier is not { } id
            || await db.Jobs.AsNoTracking().SingleOrDefaultAsync(row => row.Id == id, cancel) is not { } row
            || await documents.Find(id, DocumentKinds.TapeReceived, cancel) is not { } file
            || await documents.Find(id, DocumentKinds.Result, cancel) is not { } document)
            return null;
        using var result = StoredResult.Read(document.Bytes);
        return new EarlierJob
        {
            Id = id,
            Tape = TapeReader.Read(file.Bytes, new TapeReading { MaxRecords = int.MaxValue, TrimJumps = trimJumps }).Value
                ?? throw new InvalidOperationException($"The tape of {id} could be read at acceptance and cannot now."),
            Ticket = ResolvedTicketReader.Read(row.TicketResolved),
            SeatedMm = Box(result.SeatedBox),
            Findings = [.. result.Findings.Where(finding => finding.State == Open).Select(Finding).Where(finding => finding.Severity != Severity.Note)],
        };
    }

    private static EarlierFinding Finding(StoredFinding finding) => new(
        finding.Number,
        finding.Rule,
        Word<Severity>(finding.Severity) ?? Severity.Note,
        finding.Message,
        finding.Member("count").GetInt32(),
        finding.Member("remedy") is { ValueKind: JsonValueKind.Object } remedy ? Word<Actor>(remedy.GetProperty("who").GetString()!) : null,
        [.. finding.Places.Select(Place)]);

    private static Place Place(JsonElement place) => new(Word<PlaceKind>(place.GetProperty("at").GetString()!) ?? PlaceKind.Tape)
    {
        BoxMm = place.TryGetProperty("boxMm", out var box) ? Box(box) : null,
        Stitches = place.TryGetProperty("stitches", out var stitches)
            ? new StitchRange(stitches.GetProperty("first").GetInt32(), stitches.GetProperty("last").GetInt32())
            : null,
        Pointer = place.TryGetProperty("pointer", out var pointer) ? pointer.GetString() : null,
    };

    private static BoxMm? Box(JsonElement box) => box.ValueKind != JsonValueKind.Object
        ? null
        : new BoxMm(Mm(box, "left"), Mm(box, "bottom"), Mm(box, "right"), Mm(box, "top"));

    private static double Mm(JsonElement box, string side) => box.GetProperty(side).GetDouble();

    private static T? Word<T>(string word)
        where T : struct, Enum =>
        Words<T>.Standard.TryParse(word, out var value) ? value : null;
}

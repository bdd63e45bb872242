using System.Text.Json;
using CapPrep.Engine.Measures;

namespace CapPrep.Service.Jobs;

/// <summary>A finding as the result document has it.</summary>
/// <param name="Whole">The element as it was written.</param>
internal sealed record StoredFinding(int Number, string Rule, string Severity, string State, string Message, JsonElement Whole)
{
    /// <summary>Figures or texts that belong to it; an empty element where it has none.</summary>
    public JsonElement Member(string name) => Whole.TryGetProperty(name, out var value) ? value : default;

    public IEnumerable<JsonElement> Places => Member("places") is { ValueKind: JsonValueKind.Array } places ? places.EnumerateArray() : [];
}

/// <summary>A finding that a person had accepted before.</summary>
internal sealed record StoredAcceptance(int Number, string Rule);

/// <summary>What later requests need to know of a result that was stored.</summary>
internal sealed class StoredResult : IDisposable
{
    private readonly JsonDocument _document;

    private StoredResult(JsonDocument document)
    {
        _document = document;
        Findings = [.. Items("findings").Select(Finding)];
        Accepted = [.. Items("accepted").Select(one => new StoredAcceptance(one.GetProperty("number").GetInt32(), one.GetProperty("rule").GetString()!))];
    }

    public IReadOnlyList<StoredFinding> Findings { get; }

    public IReadOnlyList<StoredAcceptance> Accepted { get; }

    /// <summary>First and last penetration, from 1, of each element by its number; empty where no order was worked out.</summary>
    public IReadOnlyDictionary<int, (int First, int Last)> Elements => Member("sewOrder", "elements") is { ValueKind: JsonValueKind.Array } elements
        ? elements.EnumerateArray().ToDictionary(element => element.GetProperty("element").GetInt32(), element => Range(element.GetProperty("tapeStitches")))
        : new Dictionary<int, (int, int)>();

    /// <summary>Numbers of the elements in the proposed order; empty where none was worked out.</summary>
    public IReadOnlyList<int> ProposedOrder => Member("sewOrder", "order", "proposed") is { ValueKind: JsonValueKind.Array } order
        ? [.. order.EnumerateArray().Select(element => element.GetInt32())]
        : [];

    /// <summary>Received color blocks in the order of the tape to sew.</summary>
    public IReadOnlyList<int> SewnBlocks => [.. Items("needlePlan").Select(step => step.GetProperty("block").GetInt32())];

    /// <summary>The tape to sew lies the other way round than the cap.</summary>
    public bool IsSewnTurned => (Member("ticket", "tapeIs") is { ValueKind: JsonValueKind.String } tapeIs && tapeIs.GetString() == "turned")
        != (Member("tapeToSew", "changes") is { ValueKind: JsonValueKind.Array } changes && changes.EnumerateArray().Any(change => change.GetString() == "turned180"));

    /// <summary>Where the tape to sew starts, in tape units of the received one.</summary>
    public TapePoint SewnStart => Member("tapeToSew", "originShiftMm") is { ValueKind: JsonValueKind.Object } shift
        ? new(Units(shift.GetProperty("x")), Units(shift.GetProperty("y")))
        : TapePoint.Origin;

    /// <summary>Box of the design on the cap, mm; an empty element for a design that lies on no cap.</summary>
    public JsonElement SeatedBox => Member("seating", "boxMm");

    public static StoredResult Read(byte[] utf8) => new(JsonDocument.Parse(utf8));

    public void Dispose() => _document.Dispose();

    private IEnumerable<JsonElement> Items(string name) => Member(name) is { ValueKind: JsonValueKind.Array } items ? items.EnumerateArray() : [];

    private JsonElement Member(params ReadOnlySpan<string> path)
    {
        var element = _document.RootElement;
        foreach (var name in path)
        {
            if (element.ValueKind != JsonValueKind.Object || !element.TryGetProperty(name, out element))
                return default;
        }

        return element;
    }

    private static StoredFinding Finding(JsonElement one) => new(
        one.GetProperty("number").GetInt32(),
        one.GetProperty("rule").GetString()!,
        one.GetProperty("severity").GetString()!,
        one.GetProperty("state").GetString()!,
        one.GetProperty("message").GetString()!,
        one);

    private static int Units(JsonElement millimeters) => Tenths.FromMillimeters(millimeters.GetDouble()).Value;

    private static (int First, int Last) Range(JsonElement stitches) =>
        (stitches.GetProperty("first").GetInt32(), stitches.GetProperty("last").GetInt32());
}

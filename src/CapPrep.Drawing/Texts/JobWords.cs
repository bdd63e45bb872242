using System.Globalization;
using CapPrep.Drawing.Sheets;
using CapPrep.Engine;
using CapPrep.Engine.Reading;
using CapPrep.Engine.Tickets;

namespace CapPrep.Drawing.Texts;

/// <summary>What a job is called on paper.</summary>
internal sealed class JobWords(JobFacts facts, Preparation preparation, SheetWords words)
{
    private const string Between = "  ·  ";

    private readonly Ticket _ticket = preparation.Ticket.Received;

    public string Order => _ticket.OrderNumber;

    public string Design => preparation.Ticket.Design;

    /// <summary>Line, place, design and customer, as far as known.</summary>
    public string Particulars => Joined(
        words.Say("order.line", ("line", preparation.Ticket.Line)),
        words["location." + Words<CapLocation>.Standard.Of(preparation.Ticket.Location)],
        Design,
        _ticket.Customer);

    /// <summary>The same, with the whole order number in front where it was cut above.</summary>
    public string ParticularsBelow(FittedLine order) => order.Cut ? Joined(Order, Particulars) : Particulars;

    public string Number => facts.Number is { } number
        ? words.Say("job.number", ("number", number.ToString(CultureInfo.InvariantCulture)))
        : words["job.none"];

    public string NumberAndRevision => facts.Revision > 1
        ? Joined(Number, words.Say("job.revision", ("revision", facts.Revision.ToString(CultureInfo.InvariantCulture))))
        : Number;

    /// <summary>Always UTC and said so, whatever the offset it came with.</summary>
    public string Received => Joined(
        words.Say("received", ("time", facts.Received.UtcDateTime.ToString("yyyy-MM-dd HH:mm 'UTC'", CultureInfo.InvariantCulture))),
        facts.FileName.Length > 0 ? words.Say("file", ("file", facts.FileName)) : null);

    /// <summary>What the code says; the card prints the same words.</summary>
    public string Code => string.Create(
        CultureInfo.InvariantCulture,
        $"{facts.QrPrefix}CAPPREP {facts.Number?.ToString(CultureInfo.InvariantCulture) ?? "-"} {facts.TapeSha8?.ToUpperInvariant()}").TrimEnd();

    public static string Joined(params ReadOnlySpan<string?> parts)
    {
        var kept = new List<string>();
        foreach (var part in parts)
            if (!string.IsNullOrWhiteSpace(part))
                kept.Add(part);
        return string.Join(Between, kept);
    }
}

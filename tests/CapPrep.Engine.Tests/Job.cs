using CapPrep.Engine.Checks;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Tests;

/// <summary>One design to prepare, by default a clean one on the mid-crown style of the starter catalog.</summary>
internal sealed record Job
{
    internal static readonly Job Clean = new();

    internal Tape Tape { get; init; } = Stitched.Seated(800, 450);

    internal Ticket Ticket { get; init; } = new()
    {
        OrderNumber = "QS-1",
        CapStyle = "six-panel-structured-mid",
        Quantity = 48,
        Threads = [new TicketThread { Block = 1, Name = "Navy", Color = "#1B2A5C" }],
    };

    /// <summary>Null: the ticket's article number is unknown.</summary>
    internal CapStyle? Style { get; init; } = StyleOf("six-panel-structured-mid");

    internal CapFrame Frame { get; init; } = FrameOf("wide-270");

    internal Machine Machine { get; init; } =
        Embedded.StarterCatalog.Machines.Single(machine => machine.Id == "eight-head").Value;

    internal RuleBook? Book { get; init; }

    internal IReadOnlyList<string> Suggestions { get; init; } = [];

    internal IReadOnlyList<CapStyle> OtherStyles { get; init; } = [];

    internal bool SewnBefore { get; init; }

    internal static CapStyle StyleOf(string id) =>
        Embedded.StarterCatalog.CapStyles.Single(style => style.Id == id).Value;

    internal static CapFrame FrameOf(string id) =>
        Embedded.StarterCatalog.CapFrames.Single(frame => frame.Id == id).Value;

    internal Job On(string style) => this with { Style = StyleOf(style), Ticket = Ticket with { CapStyle = style } };

    internal Job Seating(TicketSeating seating) => this with { Ticket = Ticket with { Seating = seating } };

    /// <summary>The zone of the style at the front, changed.</summary>
    internal Job WithFront(Func<Zone, Zone> change) => this with
    {
        Style = Style! with { Zones = [.. Style.Zones.Select(zone => zone.Location == CapLocation.Front ? change(zone) : zone)] },
    };

    internal PrepareRequest Request()
    {
        var resolved = TicketResolver.Resolve(
            Ticket, new ShopDefaults(Machine.Id, "gauge-1", HouseBook.BookId, 40), Style?.Id, Frame.Id, "test.dst");
        return new PrepareRequest
        {
            Tape = Tape,
            Ticket = resolved,
            Setup = new Setup
            {
                Style = Style,
                StyleSuggestions = Suggestions,
                OtherStyles = OtherStyles,
                Frame = Frame,
                Machine = Machine,
                Station = Embedded.StarterCatalog.FramingStations[0].Value,
                Rules = EffectiveRules.For(
                    Embedded.HouseBook, Book is null ? null : (Book, 4), Ticket.Customer, resolved.CapStyle, resolved.Location),
            },
            Label = "10427",
            SewnBefore = SewnBefore,
        };
    }

    internal Preparation Prepare() => CapPrepper.Prepare(Request());

    /// <summary>The finding of one rule, null when it is silent.</summary>
    internal Finding? Finding(string rule) => Prepare().Findings.SingleOrDefault(finding => finding.Rule == rule);
}

using CapPrep.Engine.Pieces;
using CapPrep.Engine.Sequence.Cost;
using CapPrep.Engine.Shift;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CapPrep.Engine.Trade;

namespace CapPrep.Engine.Sequence.Planning;

/// <summary>Everything that the sew order of one design depends on.</summary>
public sealed record SewOrderRequest
{
    public required StitchSequence Stitches { get; init; }

    public required DesignReading Reading { get; init; }

    public required Placement Placement { get; init; }

    public required OrderBudget Budget { get; init; }

    public required OrderLimits Limits { get; init; }

    /// <summary>Why the order rules do not speak here, in one sentence; null: they do.</summary>
    public string? OrderMattersNot { get; init; }

    /// <summary>Null: a straight group at the lower edge stands for the tagline, and no other line is known.</summary>
    public TextLinePlaces? Lines { get; init; }

    /// <summary>Received blocks, from 1, behind which the stop is there for a person's hands: nothing moves across it.</summary>
    public IReadOnlyList<int> DeliberateStops { get; init; } = [];

    /// <summary>Elements that stay where they are and that no order rule counts, by index.</summary>
    public IReadOnlyList<int> KeptInPlace { get; init; } = [];

    /// <summary>The tape holds records whose meaning is not known: its order is never changed.</summary>
    public bool HasUnknownRecords { get; init; }

    public TrimBy TrimBy { get; init; } = TrimBy.Jumps;

    /// <summary>The machine ties in and off by itself: no ties are added.</summary>
    public bool MachineTies { get; init; }

    public SewOrderMode Mode { get; init; } = SewOrderMode.IfBetter;

    /// <summary>Tells apart orders that are equally good; null: nothing is known of the cloth.</summary>
    public ShiftModel? Shift { get; init; }

    /// <summary>Null: the best order is looked for.</summary>
    public SettledOrder? Settled { get; init; }
}

/// <summary>An order that nobody may change any more.</summary>
/// <param name="Order">Indices of the elements; null: the received order.</param>
/// <param name="Because">Why, in one sentence.</param>
public sealed record SettledOrder(IReadOnlyList<int>? Order, string Because)
{
    /// <summary>Color block in which every element is sewn, by index of the element, from 0; null: those of the tape.</summary>
    public IReadOnlyList<int>? Blocks { get; init; }
}

/// <summary>What another order may cost.</summary>
public sealed record OrderBudget
{
    /// <summary>Trims of the tape as first received, against which all others are counted.</summary>
    public required int ReceivedTrims { get; init; }

    /// <summary>Color changes of the tape as first received, against which all others are counted.</summary>
    public required int ReceivedColorChanges { get; init; }

    /// <summary>Seconds that one trim takes.</summary>
    public required double TrimSeconds { get; init; }

    /// <summary>Seconds that one change of color takes.</summary>
    public required double ColorChangeSeconds { get; init; }

    /// <summary>Seconds that one cap is sewn, without stops.</summary>
    public required double SewingSeconds { get; init; }

    /// <summary>How often the machine is filled for the whole order, at least 1.</summary>
    public int Loads { get; init; } = 1;

    /// <summary>Trims beyond the received ones that the ticket allows; null: no limit of its own.</summary>
    public int? AllowExtraTrims { get; init; }

    /// <summary>Color changes beyond the received ones that may be proposed, at least 0.</summary>
    public int AllowExtraColorChanges { get; init; }

    /// <summary>Minutes that the whole order may take longer; null: no limit of its own.</summary>
    public double? ExtraMinutes { get; init; }

    // House: beyond the received trims, trimming may take this share of the sewing time.
    private const double TrimShareOfSewing = 0.15;

    /// <summary>The most trims an order may have on this machine; less than 0 when there is no time for its color changes.</summary>
    /// <param name="trimBy">How the machine trims.</param>
    /// <param name="extraColorChanges">Color changes beyond the received ones; less than 0: fewer.</param>
    public int MostTrims(TrimBy trimBy, int extraColorChanges)
    {
        var byTime = TrimSeconds <= 0 ? int.MaxValue : (int)Math.Min(int.MaxValue, TrimShareOfSewing * SewingSeconds / TrimSeconds);
        var most = trimBy == TrimBy.Jumps ? Math.Max(ReceivedTrims, byTime) : ReceivedTrims;
        most = Math.Min(most, AllowExtraTrims is { } extra ? ReceivedTrims + extra : int.MaxValue);
        if (ExtraMinutes is not { } minutes)
            return most;
        var changing = extraColorChanges * ColorChangeSeconds;
        return TrimSeconds > 0 ? (int)Math.Clamp(ReceivedTrims + Math.Floor((minutes * 60 / TrimSeconds / Loads) - (changing / TrimSeconds)), -1, most)
            : changing * Loads <= minutes * 60 ? most
            : -1;
    }
}

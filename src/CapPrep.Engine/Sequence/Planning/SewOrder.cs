using CapPrep.Engine.Sequence.Cost;
using CapPrep.Engine.Sequence.Writing;

namespace CapPrep.Engine.Sequence.Planning;

/// <summary>Which order the tape to sew has.</summary>
public enum UsedOrder
{
    Received,
    Proposed,
}

/// <summary>What can be said of an order in figures.</summary>
/// <param name="Shares">How far it departs from the order rules.</param>
/// <param name="ColorChanges">Changes of color block between needle points.</param>
/// <param name="Trims">Cuts between needle points of one block.</param>
/// <param name="TravelMm">Way from element to element with the needle up, mm.</param>
public sealed record OrderFigures(OrderShares Shares, int ColorChanges, int Trims, double TravelMm)
{
    /// <summary>How far the sewn moves afterward, as a share of what it does in the received order; null: no sheet was worked out.</summary>
    public double? DriftRatio { get; init; }
}

/// <summary>What the order index cannot fall below.</summary>
/// <param name="LayersOnly">With the layers alone, colors and trims for nothing.</param>
/// <param name="ColorsHeld">With the layers and every color sewn once, trims for nothing.</param>
public sealed record IndexFloor(double LayersOnly, double ColorsHeld);

/// <summary>How sure it is that no better order exists.</summary>
public enum CertificateClaim
{
    /// <summary>None of the orders it speaks of has a lower sum.</summary>
    Proven,

    /// <summary>None can be better by more than the gap.</summary>
    Bounded,

    /// <summary>The best order found, without a bound.</summary>
    Found,
}

/// <summary>What is proven about the proposed order. It speaks of order cost and trims of these elements, of nothing else.</summary>
/// <param name="Index">Order cost and trim price of the proposed order, in hundreds of points.</param>
/// <param name="Bound">What that sum cannot fall below.</param>
/// <param name="GapPoints">The difference in points.</param>
/// <param name="CostBound">What the order cost alone cannot fall below, with any number of trims.</param>
/// <param name="Under">What the orders it speaks of keep.</param>
/// <param name="Says">The claim in one sentence.</param>
/// <param name="SaysOfTrims">What more trims could still buy, in one sentence.</param>
public sealed record Certificate(
    CertificateClaim Claim,
    double Index,
    double Bound,
    double GapPoints,
    double CostBound,
    IReadOnlyList<string> Under,
    string Says,
    string SaysOfTrims);

/// <summary>One way to trade trims for order.</summary>
/// <param name="ExtraMinutes">What it takes longer on the whole order.</param>
/// <param name="WhyNot">Empty for the row that is proposed.</param>
public sealed record TradeOff(
    int ExtraColorChanges,
    int ExtraTrims,
    double OrderIndex,
    double LineIndexMax,
    double TaglineLate,
    double ExtraSecondsPerCap,
    double ExtraMinutes,
    CertificateClaim Claim,
    bool Chosen,
    string WhyNot)
{
    /// <summary>As in <see cref="OrderFigures.DriftRatio"/>.</summary>
    public double? DriftRatio { get; init; }
}

/// <summary>An element that changes its place.</summary>
/// <param name="From">Place in the received order, from 0.</param>
/// <param name="To">Place in the proposed order, from 0.</param>
/// <param name="Because">In a few words of the trade.</param>
public sealed record OrderMove(int Element, int From, int To, string Because);

/// <summary>Two elements of one thread that overlap and may change places, since that does not show.</summary>
public readonly record struct RelaxedPair(int One, int Other);

/// <summary>The sew order of a design: what was received, what is proposed, and which of the two is used.</summary>
public sealed record SewOrder
{
    public required OrderFigures Received { get; init; }

    public required OrderFigures Proposed { get; init; }

    public required IndexFloor Floor { get; init; }

    public required UsedOrder Used { get; init; }

    /// <summary>Why the received order is used; empty when it is not.</summary>
    public required string KeptBecause { get; init; }

    /// <summary>The proposed order by index of element.</summary>
    public required IReadOnlyList<int> Order { get; init; }

    /// <summary>The proposed order is not the received one.</summary>
    public bool IsChanged => Order.Where((element, at) => element != at).Any();

    public required Certificate Certificate { get; init; }

    /// <summary>At most ten, the received order first.</summary>
    public required IReadOnlyList<TradeOff> TradeOffs { get; init; }

    public required IReadOnlyList<OrderMove> Moves { get; init; }

    /// <summary>What the order rules say of the received order.</summary>
    public required IReadOnlyList<OrderRuleResult> ReceivedRules { get; init; }

    /// <summary>What they say of the proposed one.</summary>
    public required IReadOnlyList<OrderRuleResult> ProposedRules { get; init; }

    /// <summary>The pairs that were kept: layers, tack-down and deliberate stops; how many follow from them all.</summary>
    public required int MustFollowPairs { get; init; }

    public required IReadOnlyList<RelaxedPair> Relaxed { get; init; }

    /// <summary>Elements of a straight group at the lower edge that stands for the tagline, or of the tagline itself.</summary>
    public required IReadOnlyList<int> Tagline { get; init; }

    /// <summary>How the proposed order is written.</summary>
    public required SewPlan Plan { get; init; }
}

using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;

namespace CapPrep.Engine.Pieces;

/// <summary>A way of thread that later elements hide, or that lies over earlier ones.</summary>
/// <param name="Cover">Its cells.</param>
/// <param name="Reason">What is lost when it is not hidden any more.</param>
/// <param name="IsLead">Sewn before its element is finished: what covers it comes after the element.</param>
/// <param name="IsLoose">Lies on what is there already: what is under it comes before the element.</param>
internal sealed record ThreadWay(Cover Cover, MustFollowReason Reason, bool IsLead, bool IsLoose);

/// <summary>A part with the ways of its thread.</summary>
/// <param name="Part">The part.</param>
/// <param name="Thread">Its thread.</param>
/// <param name="Ways">Underlay, hidden travel and floats in it, and the links at both its ends.</param>
/// <param name="Box">Box of everything.</param>
internal sealed record Layer(Part Part, int Thread, IReadOnlyList<ThreadWay> Ways, Box Box)
{
    public static Layer Of(StitchSequence stitches, Part part, int thread, Cover? linkTo, Cover? linkFrom, Box box)
    {
        var ways = Hidden(part).Concat(Floats(stitches, part)).ToList();
        if (linkTo is not null)
            ways.Add(new(linkTo, MustFollowReason.Travel, IsLead: true, IsLoose: false));
        if (linkFrom is not null)
            ways.Add(new(linkFrom, MustFollowReason.Travel, IsLead: false, IsLoose: true));
        return new(part, thread, ways, box);
    }

    private static IEnumerable<ThreadWay> Hidden(Part part) => part.Sections
        .Where(section => section.Role is SpanRole.Underlay or SpanRole.HiddenTravel)
        .Select(section => new ThreadWay(
            section.Cover,
            section.Role == SpanRole.Underlay ? MustFollowReason.Underlay : MustFollowReason.HiddenTravel,
            IsLead: true,
            IsLoose: false));

    private static IEnumerable<ThreadWay> Floats(StitchSequence stitches, Part part) => stitches.Floats(part.Sections)
        .Select(i => new ThreadWay(stitches.ThreadOf(new(i - 1, i)), MustFollowReason.Travel, IsLead: true, IsLoose: true));
}

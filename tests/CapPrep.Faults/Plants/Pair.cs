using CapPrep.FaultCorpus.Designs;
using CapPrep.FaultCorpus.Geometry;

namespace CapPrep.FaultCorpus.Plants;

/// <summary>A clean design, and the same with one thing wrong.</summary>
internal sealed record Pair(Design Good, Design Bad)
{
    /// <summary>Names, or beginnings of names, of the parts where the fault lies; empty: in the ticket or the file.</summary>
    public IReadOnlyList<string> Where { get; init; } = [];

    /// <summary>Where exactly, when a part is much larger than its fault.</summary>
    public Rect? Place { get; init; }

    public IReadOnlyList<string> Companions { get; init; } = [];

    public string AtLeast { get; init; } = "warn";

    public double? Beyond { get; init; }

    internal PlantedFault Fault(string rule) => new(rule)
    {
        Place = Place ?? (Where.Count == 0 ? null : BoxOf(Where)),
        Companions = Companions,
        AtLeast = AtLeast,
        Beyond = Beyond,
    };

    private Rect BoxOf(IReadOnlyList<string> names) => Bad.Parts
        .Where(part => names.Any(name => part.Name.StartsWith(name, StringComparison.Ordinal)))
        .Select(part => part.Box)
        .Aggregate((all, box) => all.With(box));
}

/// <summary>A rule, and how its fault is planted.</summary>
internal sealed record Plant(string Rule, Func<Chance, Pair> Draw)
{
    /// <summary>The value comes as near to the limit as measuring can tell: seen, not judged.</summary>
    public Func<Chance, double, Pair>? Near { get; init; }

    /// <summary>What lies above the limit is wrong.</summary>
    public bool IsUpper { get; init; }
}

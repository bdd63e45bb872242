using CapPrep.FaultCorpus.Plants;
using CapPrep.FaultCorpus.Sewing;

namespace CapPrep.FaultCorpus;

/// <summary>A clean tape and the same with one fault.</summary>
public sealed record TapePair(CorpusTape Good, CorpusTape Bad);

/// <summary>Tapes made from nothing but a name and a number: clean ones by layout, and faulty ones by rule.</summary>
public static class Corpus
{
    private static readonly IReadOnlyList<Plant> Plants =
        [.. Plates.All, .. Orders.All, .. Seams.All, .. Stitching.All, .. Letterings.All, .. Materials.All, .. Papers.All, Stitching.TooDense];

    public static IReadOnlyList<string> Families { get; } = [.. Layouts.Families.All.Select(family => family.Name)];

    /// <summary>Rules that a fault is planted for.</summary>
    public static IReadOnlyList<string> Rules { get; } = [.. Plants.Select(plant => plant.Rule)];

    /// <summary>Rules whose fault can be put as near to the limit as wanted.</summary>
    public static IReadOnlyList<string> Measured { get; } = [.. Plants.Where(plant => plant.Near is not null).Select(plant => plant.Rule)];

    /// <summary>What lies above the limit of this rule is wrong.</summary>
    public static bool IsUpper(string rule) => Plants.Single(known => known.Rule == rule).IsUpper;

    /// <summary>Designs that look wrong and are right, and the rule that their twin breaks.</summary>
    public static IReadOnlyList<(int Number, string Title, string Rule)> LookWrong { get; } =
        [.. Good.LooksWrong.All.Select(design => (design.Number, design.Title, design.Rule))];

    public static CorpusTape Clean(string family, int number)
    {
        var layout = Layouts.Families.All.Single(known => known.Name == family);
        return Needlework.Sew(layout.Draw(new(family, number)), family, number) with { IsHard = layout.IsHard };
    }

    /// <summary>The same, each letter sewn from its other side.</summary>
    public static CorpusTape CleanReversed(string family, int number)
    {
        var design = Layouts.Families.All.Single(known => known.Name == family).Draw(new(family, number));
        return Needlework.Sew(design.Map(part => part is Letters.Letter letter ? letter with { Leftward = !letter.Leftward } : part), family, number);
    }

    public static TapePair Planted(string rule, int number)
    {
        var plant = Plants.Single(known => known.Rule == rule);
        return Sewn(plant.Draw(new(rule, number)), rule, rule, number);
    }

    /// <summary>The fault at a distance from its limit, as a share of the limit; above 0 on the side that is right.</summary>
    public static CorpusTape Near(string rule, double distance, int number)
    {
        var plant = Plants.Single(known => known.Rule == rule);
        return Sewn(plant.Near!(new($"near {rule}", number), distance), rule, rule, number).Bad;
    }

    public static TapePair Looking(int design, int number)
    {
        var looks = Good.LooksWrong.All.Single(known => known.Number == design);
        var pair = Sewn(looks.Draw(new(looks.Title, number)), looks.Title, looks.Rule, number);
        return pair with { Good = pair.Good with { IsHard = true } };
    }

    private static TapePair Sewn(Pair pair, string family, string rule, int number) => new(
        Needlework.Sew(pair.Good, family, number) with { Name = $"{family} {number} clean" },
        Needlework.Sew(pair.Bad, family, number, pair.Fault(rule)));
}

using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;

namespace CapPrep.TestKit.Tapes.Letters;

/// <summary>What letters are sewn of.</summary>
public enum LetterWork
{
    Satin,

    /// <summary>One line of running stitches.</summary>
    Running,

    /// <summary>Columns so wide that their rows are split.</summary>
    Split,
}

/// <summary>How the needle comes from one letter to the next.</summary>
public enum LetterJoin
{
    /// <summary>Tied off, cut and tied in again.</summary>
    Trim,

    /// <summary>Led on by running stitches.</summary>
    Thread,
}

/// <summary>A line of letters to sew; sizes in tape units.</summary>
/// <param name="Text">Letters and spaces.</param>
public sealed record Lettering(string Text)
{
    /// <summary>Middle of the base line.</summary>
    public TapePoint Middle { get; init; } = TapePoint.Origin;

    /// <summary>Height of lower case; capitals and ascenders are 1.4 times as high.</summary>
    public int XHeight { get; init; } = 60;

    public int StrokeWidth { get; init; } = 12;

    /// <summary>Of satin, from one needle point to the next on the same side.</summary>
    public int Pitch { get; init; } = 4;

    /// <summary>Bare cloth between the letters.</summary>
    public int Gap { get; init; } = 10;

    /// <summary>What a space adds.</summary>
    public int Space { get; init; } = 30;

    public double TiltDegrees { get; init; }

    /// <summary>Radius of a base line that rises in its middle when above 0, hangs when below; 0: straight.</summary>
    public int Radius { get; init; }

    /// <summary>How far the letters lean to the right, percent of the height.</summary>
    public int SlantPercent { get; init; }

    public LetterWork Work { get; init; } = LetterWork.Satin;

    public LetterJoin Join { get; init; } = LetterJoin.Trim;

    public bool HasUnderlay { get; init; } = true;

    /// <summary>Places of the letters in the order of sewing; null: left to right.</summary>
    public IReadOnlyList<int>? Order { get; init; }

    /// <summary>Height of capitals.</summary>
    public int CapHeight => XHeight * 7 / 5;

    /// <summary>From the middle to the right end and then from the middle to the left one.</summary>
    public Lettering CenterOut()
    {
        var count = Text.Count(letter => letter != ' ');
        return this with { Order = [.. Enumerable.Range(count / 2, count - (count / 2)), .. Enumerable.Range(0, count / 2).Reverse()] };
    }

    /// <summary>Sews the line; the first letter is reached by a trim, or by a move at the very start or behind a stop.</summary>
    /// <returns>The letters from left to right.</returns>
    public IReadOnlyList<DraftedLetter> Sew(Draft draft)
    {
        var places = LetterPlace.Of(this);
        var way = new TextWay(Middle, TiltDegrees, Radius);
        var sewn = new SortedDictionary<int, DraftedLetter>();
        foreach (var place in Order ?? [.. Enumerable.Range(0, places.Count)])
        {
            var first = Penetrations(draft);
            var moves = draft.Moves.Count;
            new LetterNeedle(this, draft, way).Sew(places[place], isFirst: sewn.Count == 0);
            var points = draft.Moves.Skip(moves).Where(move => move.Kind == RecordKind.Stitch).Select(move => move.To);
            sewn[place] = new(
                places[place].Letter, place, places[place].From, places[place].To,
                points.Select(Box.Of).Aggregate((sum, box) => sum.Union(box)), first, Penetrations(draft) - 1);
        }

        return [.. sewn.Values];
    }

    private static int Penetrations(Draft draft) => draft.Moves.Count(move => move.Kind == RecordKind.Stitch);
}

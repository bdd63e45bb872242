using CapPrep.Engine.Checks;
using CapPrep.Engine.Drafting;
using CapPrep.Engine.Lettering;
using CapPrep.Engine.Seating;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Trade;
using CapPrep.TestKit.Tapes.Letters;
using TextToSew = CapPrep.TestKit.Tapes.Letters.Lettering;

namespace CapPrep.Engine.Tests.Checks.OnLetters;

/// <summary>
/// A job whose lines of letters are known from their drafting, so that a rule is tested without the finder.
/// </summary>
internal sealed record Lettered
{
    private Lettered(Draft draft, IReadOnlyList<(TextToSew Line, IReadOnlyList<DraftedLetter> Letters)> lines) =>
        (Draft, Lines) = (draft, lines);

    internal Draft Draft { get; }

    internal IReadOnlyList<(TextToSew Line, IReadOnlyList<DraftedLetter> Letters)> Lines { get; }

    internal Job Job { get; init; } = Job.Clean;

    /// <summary>What is known of each line beyond its drafting.</summary>
    internal Func<TextLine, TextLine> Known { get; init; } = line => line;

    internal static Lettered Of(params TextToSew[] lines) => On(draft => draft, lines);

    /// <param name="ground">What is sewn before the lines.</param>
    /// <param name="lines">In sewing order.</param>
    internal static Lettered On(Func<Draft, Draft> ground, params TextToSew[] lines)
    {
        var draft = ground(new Draft());
        var sewn = lines.Select(line => (line, line.Sew(draft))).ToArray();
        return new(draft, sewn);
    }

    internal Finding? Finding(string rule) => Inspector.Inspect(Subject()).SingleOrDefault(finding => finding.Rule == rule);

    internal Severity? Level(string rule) => Finding(rule)?.Severity;

    internal Subject Subject()
    {
        var request = (Job with { Tape = Draft.ToTape("TEST") }).Request();
        var stitches = StitchSequence.Of(request.Tape, request.Setup.Machine.Tape.TrimCount);
        var seated = Seater.Seat(stitches, request.Ticket, request.Setup)!;
        var subject = new Subject(request.Tape, stitches, request.Ticket, request.Setup, seated);
        return subject.With([.. Lines.Select((line, i) =>
            Known(KnownLine.Of(line.Line, line.Letters, seated.Offset, subject.Reading.Elements)) with { Index = i })]);
    }
}

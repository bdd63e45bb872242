using CapPrep.Engine.Lettering;
using CapPrep.Engine.Tapes;
using CapPrep.Engine.Tickets;
using CsCheck;
using Shouldly;
using Xunit;
using Text = CapPrep.TestKit.Tapes.Letters.Lettering;

namespace CapPrep.Engine.Tests.Lettering;

/// <summary>What holds for lines of any letters.</summary>
public sealed class LineProperties
{
    private static readonly string[] Words = ["harbor", "lane", "Hills", "Peach", "RIVER", "bridge", "HOUSE", "north", "Albion", "dental"];

    private const int Texts = 60;

    private static readonly int[] Radii = [0, 0, 700, -700, 1200];

    private static readonly Gen<Text> AnyText = Gen.Select(
        Gen.Int[0, 9], Gen.Int[0, 9], Gen.Int[45, 70], Gen.Int[0, 4], Gen.Int[-12, 12], Gen.Int[0, 18],
        (one, other, height, bend, tilt, slant) => new Text($"{Words[one]} {Words[other]}")
        {
            XHeight = height,
            StrokeWidth = height / 5,
            Gap = height / 5,
            Space = height / 2,
            Radius = Radii[bend],
            TiltDegrees = Radii[bend] == 0 ? tilt : 0,
            SlantPercent = Radii[bend] == 0 ? slant : 0,
        });

    [Fact]
    public void Two_words_are_nearly_always_one_line_with_all_their_letters()
    {
        Text[] texts = [.. AnyText.Samples(Texts)];
        var whole = texts.Count(IsOneWholeLine);
        whole.ShouldBeGreaterThanOrEqualTo((int)(0.97 * texts.Length));
    }

    [Fact]
    public void Moved_they_are_the_same()
    {
        foreach (var (text, x, y) in Gen.Select(AnyText, Gen.Int[-300, 300], Gen.Int[-300, 300]).Samples(Texts / 2))
            Lines.ShouldBeAlike(Lines.Of(text with { Middle = new(x, y) }), Lines.Of(text));
    }

    [Fact]
    public void Sewn_in_any_order_they_stand_where_they_stood()
    {
        foreach (var (text, number) in Gen.Select(AnyText, Gen.Int[0, 1000]).Samples(Texts / 2))
        {
            var count = text.Text.Count(letter => letter != ' ');
            int[] order = [.. Enumerable.Range(0, count).OrderBy(place => place * 7919 % 1009 * (number + 1) % 997)];
            var (line, shuffled) = (Lines.One(text).Line, Lines.One(text with { Order = order }).Line);
            shuffled.Glyphs.Count.ShouldBe(line.Glyphs.Count);
            shuffled.LetterHeightMm.ShouldBe(line.LetterHeightMm, 0.3);
        }
    }

    [Fact]
    public void A_turned_tape_is_read_upright()
    {
        foreach (var text in AnyText.Samples(Texts / 2))
        {
            var tape = Sentence.Tape(text);
            var upright = Lines.Of(tape).ShouldHaveSingleItem();
            var turned = OfTurned(tape).ShouldHaveSingleItem();
            turned.Glyphs.Count.ShouldBe(upright.Glyphs.Count);
            turned.LetterHeightMm.ShouldBe(upright.LetterHeightMm, 0.15);
            turned.Base.RiseMm.ShouldBe(upright.Base.RiseMm, 0.3);
        }
    }

    private static bool IsOneWholeLine(Text text) =>
        Lines.Of(text) is [var line]
        && line.Glyphs.Count == text.Text.Count(letter => letter != ' ')
        && line.Base.IsArc == (text.Radius != 0);

    private static IReadOnlyList<TextLine> OfTurned(Tape tape)
    {
        var moves = Enumerable.Range(0, tape.RecordCount)
            .Select(record => new TapeMove(tape.Kinds[record], tape.PositionBehind(record).Turned()));
        var job = Job.Clean with { Tape = Stitched.Of(moves) };
        return (job with { Ticket = job.Ticket with { TapeIs = TapeOrientation.Turned } }).Prepare().TextLines;
    }
}

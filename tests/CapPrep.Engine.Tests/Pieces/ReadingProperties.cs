using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;
using CapPrep.TestKit.Tapes;
using CsCheck;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Pieces;

/// <summary>What holds for the reading of every design, on generated ones.</summary>
public sealed class ReadingProperties
{
    private const string Seed = "0N0XIzNsQ0O2";

    private static readonly Gen<(int Kind, int X, int Y, int Size, int Join)> Figure =
        Gen.Select(Gen.Int[0, 5], Gen.Int[-300, 300], Gen.Int[-300, 300], Gen.Int[20, 160], Gen.Int[0, 3]);

    private const int FixedDesigns = 60;

    private static readonly Gen<(int, int, int, int, int)[]> Design = Figure.Array[1, 14];

    [Fact]
    public void Spans_cover_every_penetration_once() => Design.Sample(
        figures =>
        {
            var stitches = Read.Stitches(Drafted(figures));
            var reading = DesignReader.Read(stitches);
            var next = 0;
            foreach (var span in reading.Spans)
            {
                span.First.ShouldBe(next);
                span.Last.ShouldBeGreaterThanOrEqualTo(span.First);
                next = span.Last + 1;
            }

            next.ShouldBe(stitches.Count);
        },
        iter: 150,
        seed: Seed);

    [Fact]
    public void Elements_and_links_cover_every_penetration_once_and_lie_in_one_strand() => Design.Sample(
        figures =>
        {
            var stitches = Read.Stitches(Drafted(figures));
            var reading = DesignReader.Read(stitches);
            var next = 0;
            foreach (var element in reading.Elements)
            {
                var link = reading.Links.SingleOrDefault(link => link.After == element.Index);
                (link?.First ?? next).ShouldBe(next);
                element.First.ShouldBe(link is null ? next : link.Last + 1);
                InOneStrand(stitches, link?.First - 1 ?? element.First, element.Last).ShouldBeTrue();
                (link?.MayBeDropped ?? true).ShouldBeTrue();
                next = element.Last + 1;
            }

            next.ShouldBe(stitches.Count);
        },
        iter: 150,
        seed: Seed);

    [Fact]
    public void Pairs_go_forward_in_time_and_are_listed_once_in_order() => Design.Sample(
        figures =>
        {
            var pairs = Read.Of(Drafted(figures)).MustFollow;
            pairs.ShouldAllBe(pair => pair.Before < pair.After);
            pairs.Select(pair => (pair.Before, pair.After)).ShouldBe(
                pairs.Select(pair => (pair.Before, pair.After)).Distinct().OrderBy(pair => pair.Before).ThenBy(pair => pair.After));
        },
        iter: 150,
        seed: Seed);

    [Fact]
    public void The_same_stitches_give_the_same_reading() => Design.Sample(
        figures => Read.Lines(Read.Of(Drafted(figures))).ShouldBe(Read.Lines(Read.Of(Drafted(figures)))),
        iter: 40,
        seed: Seed);

    [Fact]
    public void A_moved_design_is_read_the_same() => Gen.Select(Design, Gen.Int[-200, 200], Gen.Int[-200, 200]).Sample(
        (figures, across, up) =>
        {
            var moves = Drafted(figures).Moves;
            var by = new TapePoint(across, up);
            var here = Of(moves);
            var there = Of([.. moves.Select(move => move with { To = move.To + by })]);
            there.Spans.ShouldBe(here.Spans);
            there.Pieces.Select(piece => piece.ThreadPerAreaMm).ShouldBe(here.Pieces.Select(piece => piece.ThreadPerAreaMm));
            there.Elements.Select(element => element.Cover.Area).ShouldBe(here.Elements.Select(element => element.Cover.Area));
            there.Links.ShouldBe(here.Links);
            there.MustFollow.ShouldBe(here.MustFollow);
        },
        iter: 60,
        seed: Seed);

    [Fact]
    public void A_written_tape_reads_back_as_the_same_elements() => Design.Sample(
        figures =>
        {
            var draft = Drafted(figures);
            var tape = draft.ToTape("10427");
            var bytes = TapeRepair.Rewrite(tape, new() { Label = "10427", Turn180 = false }).Bytes;
            var again = TapeReader.Read(bytes, new() { TrimJumps = 3 }).Value.ShouldNotBeNull();
            Read.Lines(DesignReader.Read(StitchSequence.Of(again, 3))).ShouldBe(Read.Lines(Read.Of(draft)));
        },
        iter: 60,
        seed: Seed);

    /// <summary>
    /// Every element written as a strand of its own in the received order, links dropped: the cut changes nothing.
    /// </summary>
    [Fact]
    public void Elements_cut_apart_read_back_as_the_same_elements()
    {
        var (same, all) = (0, 0);
        for (var number = 0; number < FixedDesigns; number++)
        {
            var stitches = Read.Stitches(RandomDesign.Of(number, most: 14).Draft);
            var reading = DesignReader.Read(stitches);
            var again = Read.Of(CutApart(stitches, reading), threadOfBlock: null);
            all += reading.Elements.Count;
            same += reading.Elements.Count(element => again.Elements.Any(other =>
                other.Penetrations == element.Penetrations && other.Box == element.Box && other.Kind == element.Kind));
        }

        ((double)same / all).ShouldBeGreaterThanOrEqualTo(0.997);
    }

    private static DesignReading Of(IReadOnlyList<TapeMove> moves)
    {
        var tape = TapeReader.Read(TapeBuilder.Of([.. moves]), new() { TrimJumps = 3 });
        return DesignReader.Read(StitchSequence.Of(tape.Value.ShouldNotBeNull(), 3));
    }

    private static bool InOneStrand(StitchSequence stitches, int first, int last) =>
        Enumerable.Range(first + 1, last - first).All(i => stitches.Relations[i] == Relation.Thread);

    private static Draft Drafted((int Kind, int X, int Y, int Size, int Join)[] figures)
    {
        var draft = new Draft().Move(Read.At(figures[0].X, figures[0].Y));
        foreach (var figure in figures)
            Sew(Join(draft, figure), figure);
        return draft;
    }

    private static Draft Join(Draft draft, (int Kind, int X, int Y, int Size, int Join) figure) => figure.Join switch
    {
        0 => draft.ColorStop().Move(Read.At(figure.X, figure.Y)),
        1 => draft.Trim(Read.At(figure.X, figure.Y)),
        2 when draft.Moves[^1].Kind == RecordKind.Stitch => draft.Run(25, draft.At, Read.At(figure.X, figure.Y)),
        _ => draft,
    };

    private static Draft Sew(Draft draft, (int Kind, int X, int Y, int Size, int Join) figure) => figure.Kind switch
    {
        0 => draft.Sew(Read.Column(figure.X, figure.Y, 10 + (figure.Size / 4), figure.Size)),
        1 => draft.Sew(Read.Fill(figure.X, figure.Y, figure.X + (2 * figure.Size), figure.Y + figure.Size)),
        2 => draft.Run(25, Read.At(figure.X, figure.Y), Read.At(figure.X + figure.Size, figure.Y), Read.At(figure.X, figure.Y + figure.Size)),
        3 => draft.Stitch(Read.At(figure.X, figure.Y)).Tie(Read.At(figure.X + 20, figure.Y + 20)),
        4 => draft.Sew(Read.Column(figure.X, figure.Y, 30, figure.Size) with { UnderlayStitch = 0, Pitch = 20 }),
        _ => draft.Stitch(Read.At(figure.X, figure.Y)),
    };

    private static Draft CutApart(StitchSequence stitches, DesignReading reading)
    {
        var draft = new Draft().Move(stitches.At(0));
        for (var k = 0; k < reading.Elements.Count; k++)
        {
            var element = reading.Elements[k];
            if (k > 0 && element.Block != reading.Elements[k - 1].Block)
                draft.ColorStop().Move(stitches.At(element.First));
            else if (k > 0)
                draft.Trim(stitches.At(element.First));
            for (var i = element.First; i <= element.Last; i++)
                draft.Stitch(stitches.At(i));
        }

        return draft;
    }
}

using CapPrep.Engine.Drafting;
using CapPrep.Engine.Measures;
using CapPrep.Engine.Pieces;
using CapPrep.Engine.Tapes;
using CapPrep.TestKit.Tapes;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Pieces;

/// <summary>What a stitch is does not hang on where the design lies, which way it looks or where the thread was cut.</summary>
public sealed class SameClassTests
{
    private const int Designs = 40;

    [Fact]
    public void A_moved_design_is_made_of_the_same_stitches() =>
        Same(stitches => Copy(stitches, at => at + new TapePoint(-137, 61))).ShouldBe(1);

    [Fact]
    public void A_mirrored_design_is_made_of_the_same_stitches() =>
        Same(stitches => Copy(stitches, at => at with { X = -at.X })).ShouldBeGreaterThanOrEqualTo(0.99);

    [Fact]
    public void A_turned_design_is_made_of_the_same_stitches() =>
        Same(stitches => Copy(stitches, at => at.Turned())).ShouldBeGreaterThanOrEqualTo(0.99);

    [Fact]
    public void A_trim_between_two_elements_changes_no_class()
    {
        var (same, all) = (0, 0);
        for (var number = 0; number < Designs; number++)
        {
            var stitches = Read.Stitches(Copy(Read.Stitches(RandomDesign.Of(number, most: 14).Draft), at => at));
            var elements = DesignReader.Read(stitches).Elements;
            for (var cut = 1; cut < elements.Count; cut++)
            {
                if (elements[cut].First != elements[cut - 1].Last + 1 || stitches.Relations[elements[cut].First] != Relation.Thread)
                    continue;
                all += stitches.Count;
                same += Alike(stitches, Read.Stitches(Copy(stitches, at => at, trimBefore: elements[cut].First)));
            }
        }

        all.ShouldBeGreaterThan(0);
        ((double)same / all).ShouldBeGreaterThanOrEqualTo(0.999);
    }

    /// <summary>Share of the needle points that a copy reads as the original does.</summary>
    private static double Same(Func<StitchSequence, Draft> copy)
    {
        var (same, all) = (0, 0);
        for (var number = 0; number < Designs; number++)
        {
            var stitches = Read.Stitches(Copy(Read.Stitches(RandomDesign.Of(number, most: 14).Draft), at => at));
            all += stitches.Count;
            same += Alike(stitches, Read.Stitches(copy(stitches)));
        }

        return (double)same / all;
    }

    private static int Alike(StitchSequence one, StitchSequence other)
    {
        other.Count.ShouldBe(one.Count);
        return Classes(one).Zip(Classes(other)).Count(pair => pair.First == pair.Second);
    }

    private static IEnumerable<StitchClass> Classes(StitchSequence stitches) =>
        DesignReader.Read(stitches).Spans.SelectMany(span => Enumerable.Repeat(span.Class, span.Penetrations));

    private static Draft Copy(StitchSequence stitches, Func<TapePoint, TapePoint> place, int trimBefore = -1)
    {
        var draft = new Draft().Move(place(stitches.At(0)));
        for (var i = 0; i < stitches.Count; i++)
        {
            var at = place(stitches.At(i));
            if (i == trimBefore || stitches.Relations[i] == Relation.Cut)
                draft.Trim(at);
            else if (stitches.Relations[i] == Relation.Stop)
                draft.ColorStop().Move(at);
            else if (stitches.Jumps[i] > 0)
                draft.Move(at);
            draft.Stitch(at);
        }

        return draft;
    }
}

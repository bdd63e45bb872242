using CapPrep.Engine.Measures;
using CapPrep.Engine.Tapes;
using CapPrep.TestKit.Preparations;
using CapPrep.TestKit.Tapes;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Pieces;

/// <summary>A tape in a new order is made of the elements that the received one was made of.</summary>
public sealed class ReadBackTests
{
    private const int Designs = 24;
    private const double LeastAlike = 0.9;

    [Fact]
    public void Elements_of_a_tape_in_a_new_order_read_back_as_they_were()
    {
        var (same, all) = (0, 0);
        for (var number = 0; number < Designs; number++)
        {
            var design = RandomDesign.Of(number, most: 30);
            var ticket = StarterShop.Ticket(design.Threads);
            var first = StarterShop.Prepare(design.Draft.ToBytes("CHANCE"), ticket);
            if (first.ProposedTape is null)
                continue;
            var again = OrderPromises.PrepareAgain(first, ticket);
            var written = PointsOf(again, first.LossCheck.ShouldNotBeNull().OriginShift);
            var received = PointsOf(first, TapePoint.Origin);
            all += received.Count;
            same += received.Count(element => written.Any(other => Alike(element, other) >= LeastAlike));
        }

        all.ShouldBeGreaterThan(200);
        ((double)same / all).ShouldBeGreaterThanOrEqualTo(0.99);
    }

    private static List<HashSet<TapePoint>> PointsOf(Preparation preparation, TapePoint shift)
    {
        var stitches = StitchSequence.Of(preparation.Tape, preparation.Setup.Machine.Tape.TrimCount);
        return [.. preparation.Reading.Elements.Select(element =>
            Enumerable.Range(element.First, element.Penetrations).Select(i => stitches.At(i) + shift).ToHashSet())];
    }

    /// <summary>Needle points in both as share of those in either.</summary>
    private static double Alike(HashSet<TapePoint> one, HashSet<TapePoint> other)
    {
        var both = one.Count(other.Contains);
        return (double)both / (one.Count + other.Count - both);
    }
}

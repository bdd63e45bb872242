using CapPrep.Engine.Tapes;
using CapPrep.FaultCorpus;
using CapPrep.FaultCorpus.Sewing;
using CapPrep.TestKit.Faults;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Corpus;

/// <summary>The corpus is worth what its own making is worth.</summary>
public sealed class GeneratorTests
{
    [Fact]
    public void The_generator_knows_nothing_of_the_engine() =>
        typeof(FaultCorpus.Corpus).Assembly.GetReferencedAssemblies()
            .Where(name => name.Name!.StartsWith("CapPrep", StringComparison.Ordinal))
            .ShouldBeEmpty();

    [Fact]
    public void Every_tape_reads_back_as_the_needle_points_and_trims_that_were_meant()
    {
        foreach (var family in FaultCorpus.Corpus.Families)
            ReadsBack(FaultCorpus.Corpus.Clean(family, 11));
    }

    [Fact]
    public void The_same_number_gives_the_same_bytes() =>
        FaultCorpus.Corpus.Clean("roundel", 7).Bytes.ShouldBe(FaultCorpus.Corpus.Clean("roundel", 7).Bytes);

    [Fact]
    public void A_planted_fault_changes_the_tape_or_the_ticket()
    {
        foreach (var pair in FaultCorpus.Corpus.Rules.Select(rule => FaultCorpus.Corpus.Planted(rule, 1)))
            (pair.Good.Bytes.SequenceEqual(pair.Bad.Bytes) && pair.Good.Ticket == pair.Bad.Ticket).ShouldBeFalse(pair.Bad.Name);
    }

    /// <summary>J. Hanley, A. Lippman-Hand, "If nothing goes wrong, is everything all right?", JAMA 249, 1983: 3/n; from memory.</summary>
    [Theory]
    [InlineData(300)]
    [InlineData(1000)]
    public void No_miss_in_n_allows_three_in_n(int trials) =>
        Confidence.UpperLimit(0, trials).ShouldBe(3.0 / trials, 0.01 * 3 / trials);

    [Fact]
    public void A_limit_for_some_misses_leaves_one_chance_in_twenty()
    {
        var limit = Confidence.UpperLimit(1, 2);

        // At most one hit of two: 1 - p * p.
        (1 - (limit * limit)).ShouldBe(0.05, 1e-9);
    }

    private static void ReadsBack(CorpusTape tape)
    {
        var read = TapeReader.Read(tape.Bytes, new TapeReading { TrimJumps = tape.Ticket.TrimJumps }).Value!;
        var stitches = StitchSequence.Of(read, tape.Ticket.TrimJumps);

        stitches.Count.ShouldBe(tape.Needles.Count, tape.Name);
        Enumerable.Range(0, stitches.Count).All(k => stitches.X[k] == tape.Needles[k].X && stitches.Y[k] == tape.Needles[k].Y).ShouldBeTrue(tape.Name);
        Enumerable.Range(0, stitches.Count).Count(k => stitches.Relations[k] == Relation.Cut).ShouldBe(tape.Needles.Skip(1).Count(needle => needle.Joint == Joint.Trim), tape.Name);
    }
}

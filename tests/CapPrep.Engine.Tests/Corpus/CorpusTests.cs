using CapPrep.TestKit.Faults;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Corpus;

/// <summary>The short form of the fault corpus: every rule, every layout and every design that looks wrong, a few times.</summary>
public sealed class CorpusTests
{
    private static readonly FaultPlan Plan = new(PerRule: 1, Clean: 60, FirstNumber: 0);

    private static readonly Lazy<(IReadOnlyList<Judged> Judged, IReadOnlyDictionary<string, ReadingShare> Read)> Clean = new(() => FaultRun.Clean(Plan));

    [Fact]
    public void Planted_faults_are_found_where_they_lie_and_nothing_else_is_said() =>
        FaultCampaign.Faults(FaultRun.Faulty(Plan)).AndNothingElse("planted");

    [Fact]
    public void Clean_designs_raise_no_alarm() =>
        FaultCampaign.Faults(Clean.Value.Judged).AndNothingElse("clean");

    [Fact]
    public void Twins_of_designs_that_only_look_wrong_are_reported() =>
        FaultCampaign.Faults(FaultRun.Twins(Plan, each: 1)).AndNothingElse("twins");

    [Fact]
    public void Stitches_are_read_as_what_they_were_sewn_as() =>
        Clean.Value.Read.Values.Aggregate((sum, share) => sum + share).ClassShare.ShouldBeGreaterThan(0.97);

    [Fact]
    public void Every_rule_has_a_planted_fault() =>
        FaultRun.Known.Except(FaultCorpus.Corpus.Rules).Except(Unplanted).ShouldBeEmpty();

    [Fact]
    public void A_third_of_the_clean_designs_look_wrong()
    {
        var judged = Clean.Value.Judged;

        judged.Count(tape => tape.Tape.IsHard).ShouldBeGreaterThan(judged.Count * 3 / 10);
    }

    // Rules about the proposed order or the reading, which no received tape can break.
    private static readonly string[] Unplanted =
    [
        "order.not-settled", "shift.disagrees", "ticket.machine", "ticket.quantity", "ticket.location", "tape.repeated-points", "tape.trims-unclear",
    ];
}

using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests;

public sealed class PrepareTests
{
    [Fact]
    public void A_clean_design_sews_as_received_without_a_finding()
    {
        var prepared = Job.Clean.Prepare();

        prepared.Findings.ShouldBeEmpty();
        prepared.Verdict.ShouldBe(Verdict.SewAsReceived);
    }
}

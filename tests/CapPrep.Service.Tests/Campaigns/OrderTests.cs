using CapPrep.TestKit.Campaigns;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Campaigns;

public sealed class OrderTests
{
    private const int Designs = 60;

    [Fact]
    public async Task Designs_made_by_chance_keep_colors_layers_and_stitches_and_stay_as_they_were_written()
    {
        var report = await OrderCampaign.Run(Designs, _ => { });

        report.Faults.ShouldBeEmpty();
        report.Figures.ShouldContain(("designs", "60"));
    }
}

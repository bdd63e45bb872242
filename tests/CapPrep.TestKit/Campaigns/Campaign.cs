namespace CapPrep.TestKit.Campaigns;

/// <summary>What a campaign found: figures by name, and every case that went wrong.</summary>
public sealed record CampaignReport(IReadOnlyList<(string Name, string Value)> Figures, IReadOnlyList<string> Faults)
{
    public bool Passed => Faults.Count == 0;
}

/// <summary>A long test that tests run in short and a command runs in full.</summary>
/// <param name="Name">One word for the command line.</param>
/// <param name="Says">What it shows, one sentence.</param>
/// <param name="FullCount">How often the full form runs it.</param>
/// <param name="Run">Runs it so many times.</param>
public sealed record Campaign(string Name, string Says, int FullCount, Func<int, Action<string>, Task<CampaignReport>> Run);

/// <summary>All campaigns there are.</summary>
public static class Campaigns
{
    public static readonly IReadOnlyList<Campaign> All =
    [
        new(
            "kills",
            "Kills the service at every named checkpoint and at random; nothing is lost, nothing happens twice.",
            1000,
            KillCampaign.Run),
        new(
            "orders",
            "Orders designs made by chance; never a color more, nothing lost, and what was written is left alone.",
            2000,
            OrderCampaign.Run),
    ];
}

using System.Globalization;
using BenchmarkDotNet.Running;
using CapPrep.Benchmarks.Stages;
using CapPrep.Benchmarks.Orders;
using CapPrep.TestKit.Campaigns;
using CapPrep.TestKit.Documents;
using CapPrep.TestKit.Faults;

return args switch
{
    ["digests", .. var culture] => PrintDigests(culture),
    ["stages", .. var sizes] => StageTable.Run(sizes),
    ["orders", .. var rest] => OrderCommand.Run(rest, Console.Out, Console.Error),
    ["campaign", "list"] => List(),
    ["campaign", "faults", .. var options] => Report(FaultCampaign.Run(options, Console.WriteLine)),
    ["campaign", var name, .. var rest] => await Run(name, rest),
    _ => Measure(args),
};

static int PrintDigests(string[] culture)
{
    if (culture is [var name])
        CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(name);
    Console.WriteLine($"{CultureInfo.CurrentCulture.Name} writes {1.5:0.0}");
    foreach (var line in Digests.Lines())
        Console.WriteLine(line);
    return 0;
}

static int List()
{
    foreach (var campaign in Campaigns.All)
        Console.WriteLine($"{campaign.Name,-10} x {campaign.FullCount,6}  {campaign.Says}");
    Console.WriteLine("faults     --per-rule 300 --clean 1000  Plants a fault per rule into clean designs; each is found, and nothing else.");
    return 0;
}

static async Task<int> Run(string name, string[] rest)
{
    if (Campaigns.All.FirstOrDefault(known => known.Name == name) is not { } campaign)
    {
        Console.Error.WriteLine($"There is no campaign '{name}'; 'campaign list' shows all.");
        return 64;
    }

    var count = rest is ["--count", var text] ? int.Parse(text, CultureInfo.InvariantCulture) : campaign.FullCount;
    return Report(await campaign.Run(count, Console.WriteLine));
}

static int Report(CampaignReport report)
{
    foreach (var (figure, value) in report.Figures)
        Console.WriteLine($"{figure}: {value}");
    foreach (var fault in report.Faults)
        Console.WriteLine("FAULT " + fault);
    return report.Passed ? 0 : 1;
}

static int Measure(string[] args)
{
    BenchmarkSwitcher.FromAssembly(System.Reflection.Assembly.GetExecutingAssembly()).Run(args);
    return 0;
}

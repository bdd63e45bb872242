using System.Globalization;
using BenchmarkDotNet.Running;
using CapPrep.TestKit.Campaigns;
using CapPrep.TestKit.Documents;

return args switch
{
    ["digests"] => PrintDigests(),
    ["campaign", "list"] => List(),
    ["campaign", var name, .. var rest] => await Run(name, rest),
    _ => Measure(args),
};

static int PrintDigests()
{
    foreach (var line in Digests.Lines())
        Console.WriteLine(line);
    return 0;
}

static int List()
{
    foreach (var campaign in Campaigns.All)
        Console.WriteLine($"{campaign.Name,-10} x {campaign.FullCount,6}  {campaign.Says}");
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
    var report = await campaign.Run(count, Console.WriteLine);
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

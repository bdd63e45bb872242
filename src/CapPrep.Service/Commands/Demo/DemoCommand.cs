namespace CapPrep.Service.Commands.Demo;

/// <summary>
/// The service shown at work: five designs of an invented club go in by its doors, and what comes back is printed. It
/// brings its own folder, ports, keys and receiver of webhooks, and changes nothing else on this computer.
/// </summary>
internal static class DemoCommand
{
    private const string Once = "--once";

    public static async Task<int> Run(string[] args)
    {
        var once = args.Contains(Once);
        var folders = DemoFolders.Make(OutFolder([.. args.Where(word => word != Once)]));
        await using var receiver = await DemoReceiver.Start();
        await using var service = await DemoService.Start(folders, receiver);
        try
        {
            return await Show(folders, receiver, service, once);
        }
        catch (OperationCanceledException) when (service.Stopping.IsCancellationRequested)
        {
            Console.WriteLine("Stopped before the end.");
            return ExitCode.Success;
        }
    }

    private static async Task<int> Show(DemoFolders folders, DemoReceiver receiver, DemoService service, bool once)
    {
        Console.WriteLine(DemoReport.Opening(service, folders));
        using var shop = await DemoShop.Open(service, receiver);
        var byHttp = await shop.SendByHttp(ClubOrders.Through(DemoDoor.Http, folders));
        byHttp = await Told(await shop.FetchPapers(byHttp, folders), receiver, service);
        var door = new DemoFolderDoor(folders, service.Stopping);
        var byFolder = await Told(await shop.SendByFolder(door, ClubOrders.Through(DemoDoor.Folder, folders)), receiver, service);

        DemoAnswer[] answers = [.. byHttp, .. byFolder];
        var differences = answers.SelectMany(DemoReport.Differences).ToArray();
        Console.WriteLine(DemoReport.Papers(answers));
        Console.WriteLine(DemoReport.Closing(differences, answers.Length));
        if (once)
            return differences.Length == 0 ? ExitCode.Success : ExitCode.OurFault;
        Console.WriteLine(DemoReport.Invitation(service, shop));
        await service.UntilStopped();
        return ExitCode.Success;
    }

    /// <summary>Waits for the webhooks of some answers and prints their rows.</summary>
    private static async Task<IReadOnlyList<DemoAnswer>> Told(IReadOnlyList<DemoAnswer> answers, DemoReceiver receiver, DemoService service)
    {
        var told = await receiver.Await(answers, service.Stopping);
        foreach (var answer in told)
            Console.WriteLine(DemoReport.Row(answer));
        return told;
    }

    private static string? OutFolder(string[] args)
    {
        var options = Options.Parse(args, "out");
        return options.Words is [] && options.Settings is []
            ? options.Find("out")
            : throw new WrongCommandLineException("demo takes --once and --out FOLDER; its settings are its own.");
    }
}

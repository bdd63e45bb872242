using CapPrep.Service.Access;
using CapPrep.Service.Plumbing;
using CapPrep.Service.Storage;

namespace CapPrep.Service.Commands;

/// <summary>Runs the service until it is told to stop.</summary>
internal static class Serve
{
    public static async Task<int> Run(string[] args)
    {
        var builder = ServiceHost.CreateBuilder(args);
        var reading = SettingsReader.Read(builder.Configuration);
        foreach (var line in reading.Faults.Concat(reading.Warnings))
            Console.Error.WriteLine(line);
        if (reading.Settings is not { } settings)
            return ExitCode.Settings;

        try
        {
            using var held = DataFolder.Take(settings);
            await using var app = ServiceHost.Build(builder, settings);
            await ServiceHost.Prepare(app, settings, CancellationToken.None);
            await app.RunAsync();
            return ExitCode.Success;
        }
        catch (DataFolderInUseException fault)
        {
            Console.Error.WriteLine(fault.Message);
            return ExitCode.DataFolderInUse;
        }
        catch (NoKeyException fault)
        {
            Console.Error.WriteLine(fault.Message);
            return ExitCode.Settings;
        }
    }
}

using CapPrep.Service.Docs;

namespace CapPrep.Service.Commands;

/// <summary>Writes the API document; needs no database and starts nothing.</summary>
internal static class OpenApiCommand
{
    public static async Task<int> Run(string[] args)
    {
        var options = Options.Parse(args, "out");
        var target = Path.GetFullPath(options.Require("out"));
        var builder = ServiceHost.CreateBuilder(options.Settings);
        await using var app = ServiceHost.Build(builder, ServiceHost.Settings(builder));
        // The host makes its routes known when it starts; here it never does.
        app.UseEndpoints(_ => { });
        await File.WriteAllBytesAsync(target, await app.Services.GetRequiredService<ApiDocument>().Bytes(CancellationToken.None));
        Console.WriteLine($"{target} written.");
        return ExitCode.Success;
    }
}

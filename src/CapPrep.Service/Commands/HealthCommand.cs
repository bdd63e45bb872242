namespace CapPrep.Service.Commands;

/// <summary>Asks the local service whether it is ready: the health check of an image without a shell.</summary>
internal static class HealthCommand
{
    public static async Task<int> Run(string[] args)
    {
        var options = Options.Parse(args);
        var builder = ServiceHost.CreateBuilder(options.Settings);
        var url = builder.Configuration[WebHostDefaults.ServerUrlsKey]?.Split(';')[0] ?? "http://127.0.0.1:5080";
        using var client = new HttpClient { Timeout = TimeSpan.FromSeconds(5) };
        try
        {
            using var answer = await client.GetAsync(new Uri(new Uri(Local(url)), "/health/ready"));
            Console.WriteLine(await answer.Content.ReadAsStringAsync());
            return answer.IsSuccessStatusCode ? ExitCode.Success : ExitCode.OurFault;
        }
        catch (Exception fault) when (fault is HttpRequestException or TaskCanceledException)
        {
            await Console.Error.WriteLineAsync($"No service answers at {url}.");
            return ExitCode.OurFault;
        }
    }

    private static string Local(string url) => url
        .Replace("//*", "//127.0.0.1", StringComparison.Ordinal)
        .Replace("//+", "//127.0.0.1", StringComparison.Ordinal)
        .Replace("//0.0.0.0", "//127.0.0.1", StringComparison.Ordinal)
        .Replace("//[::]", "//127.0.0.1", StringComparison.Ordinal);
}

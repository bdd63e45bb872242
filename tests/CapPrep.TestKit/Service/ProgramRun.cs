using System.Diagnostics;
using System.Text;

namespace CapPrep.TestKit.Service;

/// <summary>The built program as a process of its own, with its output kept.</summary>
public sealed class ProgramRun : IDisposable
{
    private readonly Process _process;
    private readonly StringBuilder _output = new();

    private ProgramRun(Process process)
    {
        _process = process;
        _process.OutputDataReceived += (_, line) => Keep(line.Data);
        _process.ErrorDataReceived += (_, line) => Keep(line.Data);
        _process.Start();
        _process.BeginOutputReadLine();
        _process.BeginErrorReadLine();
    }

    /// <summary>Everything written so far, both streams.</summary>
    public string Output
    {
        get
        {
            lock (_output)
                return _output.ToString();
        }
    }

    public bool HasExited => _process.HasExited;

    public int ProcessId => _process.Id;

    /// <summary>Starts the program of this build; environment entries are added to the present ones.</summary>
    public static ProgramRun Start(string folder, IReadOnlyDictionary<string, string> environment, params string[] args) =>
        Start(Executable("CapPrep.Service", "capprep"), folder, environment, args);

    /// <summary>Starts the program of campaigns and digests of this build.</summary>
    public static ProgramRun StartBenchmarks(IReadOnlyDictionary<string, string> environment, params string[] args) =>
        Start(Executable("CapPrep.Benchmarks", "CapPrep.Benchmarks"), Repository.Root, environment, args);

    private static ProgramRun Start(string program, string folder, IReadOnlyDictionary<string, string> environment, string[] args)
    {
        var start = new ProcessStartInfo(program, args)
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var (name, value) in environment)
            start.Environment[name] = value;
        return new ProgramRun(new Process { StartInfo = start });
    }

    /// <summary>Runs the program to its end.</summary>
    public static async Task<(int Code, string Output)> Run(string folder, params string[] args)
    {
        using var run = Start(folder, new Dictionary<string, string>(), args);
        var code = await run.Exit(TimeSpan.FromSeconds(60));
        return (code, run.Output);
    }

    /// <summary>Waits for the end; an end that does not come is a fault.</summary>
    public async Task<int> Exit(TimeSpan patience)
    {
        using var limit = new CancellationTokenSource(patience);
        await _process.WaitForExitAsync(limit.Token);
        _process.WaitForExit();
        return _process.ExitCode;
    }

    /// <summary>Ends it as a power cut would.</summary>
    public void Kill()
    {
        if (!_process.HasExited)
            _process.Kill();
        _process.WaitForExit();
    }

    public void Dispose()
    {
        Kill();
        _process.Dispose();
    }

    private void Keep(string? line)
    {
        if (line is null)
            return;
        lock (_output)
            _output.AppendLine(line);
    }

    private static string Executable(string project, string program)
    {
        var name = OperatingSystem.IsWindows() ? program + ".exe" : program;
        var configuration = Path.GetFileName(AppContext.BaseDirectory.TrimEnd(Path.DirectorySeparatorChar));
        return Path.Combine(Repository.Root, ".artifacts", "bin", project, configuration, name);
    }
}

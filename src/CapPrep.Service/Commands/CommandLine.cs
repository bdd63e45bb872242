using CapPrep.Service.Access;
using CapPrep.Service.Commands.Demo;
using CapPrep.Service.Storage;

namespace CapPrep.Service.Commands;

/// <summary>Thrown when a command line cannot be understood; the message says why.</summary>
internal sealed class WrongCommandLineException(string message) : Exception(message);

/// <summary>Thrown when settings are wrong; one line each.</summary>
internal sealed class WrongSettingsException(IReadOnlyList<string> lines) : Exception(string.Join(Environment.NewLine, lines));

/// <summary>Picks the command and gives every end its exit code.</summary>
internal static class CommandLine
{
    private const string Usage =
        """
        capprep [serve]                  runs the service; --urls http://127.0.0.1:5080
        capprep demo [--once] [--out FOLDER]
                                         shows the service at work on five designs; --once ends after it
        capprep check TAPE TICKET.json --out FOLDER [--catalog FOLDER]
                                         prepares one tape without the service
        capprep key new                  prints a well-formed key and stores nothing
        capprep key add --shop S --scopes a,b --name N
        capprep key list
        capprep key end ID
        capprep health                   asks the local service whether it is ready
        capprep openapi --out FILE       writes the API document
        capprep backup --out FILE        copies the SQLite database while it is in use
        capprep version
        Settings: appsettings.json beside the program, the environment (CapPrep__Workers__Count=2),
        or the command line (--CapPrep:Workers:Count 2).
        """;

    public static async Task<int> Run(string[] args)
    {
        try
        {
            return await Pick(args);
        }
        catch (WrongCommandLineException fault)
        {
            await Console.Error.WriteLineAsync(fault.Message + Environment.NewLine + Usage);
            return ExitCode.WrongCommandLine;
        }
        catch (Exception fault) when (fault is WrongSettingsException or NoKeyException or DataFolderUnfitException)
        {
            await Console.Error.WriteLineAsync(fault.Message);
            return ExitCode.Settings;
        }
        catch (DataFolderInUseException fault)
        {
            await Console.Error.WriteLineAsync(fault.Message);
            return ExitCode.DataFolderInUse;
        }
        catch (Exception fault)
        {
            await Console.Error.WriteLineAsync("Our fault: " + fault);
            return ExitCode.OurFault;
        }
    }

    private static Task<int> Pick(string[] args) => args switch
    {
        ["serve", .. var rest] => Serve.Run(rest),
        ["demo", .. var rest] => DemoCommand.Run(rest),
        ["check", .. var rest] => Check.Run(rest),
        ["key", "new", .. var rest] => KeyCommands.New(rest),
        ["key", "add", .. var rest] => KeyCommands.Add(rest),
        ["key", "list", .. var rest] => KeyCommands.List(rest),
        ["key", "end", var id, .. var rest] => KeyCommands.End(id, rest),
        ["key", ..] => throw new WrongCommandLineException("key takes new, add, list or end ID."),
        ["health", .. var rest] => HealthCommand.Run(rest),
        ["openapi", .. var rest] => OpenApiCommand.Run(rest),
        ["backup", .. var rest] => Backup.Run(rest),
        ["version"] => Version(),
        ["help" or "--help" or "-h", ..] => Help(),
        [] => Serve.Run(args),
        [var first, ..] when first.StartsWith("--", StringComparison.Ordinal) => Serve.Run(args),
        _ => throw new WrongCommandLineException($"There is no command '{args[0]}'."),
    };

    private static Task<int> Version()
    {
        Console.WriteLine(typeof(CommandLine).Assembly.GetName().Version?.ToString(3));
        return Task.FromResult(ExitCode.Success);
    }

    private static Task<int> Help()
    {
        Console.WriteLine(Usage);
        return Task.FromResult(ExitCode.Success);
    }
}

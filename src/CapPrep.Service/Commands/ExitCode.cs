using CapPrep.Engine;

namespace CapPrep.Service.Commands;

/// <summary>How every command ends. 1 and 134 are never ours.</summary>
internal static class ExitCode
{
    public const int Success = 0;
    public const int SewResequenced = 10;
    public const int ReturnToOrderDesk = 20;
    public const int ReturnToDigitizer = 21;
    public const int Refused = 30;
    public const int WrongCommandLine = 64;
    public const int OurFault = 70;
    public const int DataFolderInUse = 75;
    public const int Settings = 78;

    public static int Of(Verdict verdict) => verdict switch
    {
        Verdict.SewAsReceived => Success,
        Verdict.SewResequenced => SewResequenced,
        Verdict.ReturnToOrderDesk => ReturnToOrderDesk,
        _ => ReturnToDigitizer,
    };
}

using System.Security.Cryptography;
using System.Text;
using CapPrep.Engine.Tickets;

namespace CapPrep.Service.Intake;

/// <summary>What two requests for a job must have in common to be the same.</summary>
internal static class JobPrint
{
    /// <param name="tapeSha">SHA-256 of the tape's bytes, lower-case hex.</param>
    public static string Of(string shop, string tapeSha, Ticket ticket)
    {
        var head = Encoding.UTF8.GetBytes($"capprep-job-1\n{shop}\n{tapeSha}\n");
        return Convert.ToHexStringLower(SHA256.HashData([.. head, .. TicketWriter.Canonical(ticket)]));
    }
}

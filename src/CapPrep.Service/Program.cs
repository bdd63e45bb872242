using CapPrep.Service.Commands;
using CapPrep.Service.Plumbing;

return args switch
{
    [] or ["serve", ..] or ["--urls", ..] => await Serve.Run(args),
    _ => ExitCode.WrongCommandLine,
};

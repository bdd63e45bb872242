using CapPrep.Service.Commands;

return args switch
{
    [] or ["serve", ..] or ["--urls", ..] => await Serve.Run(args),
    _ => ExitCode.WrongCommandLine,
};

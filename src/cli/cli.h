// The command line.
#pragma once

namespace rb {

/// Runs what the words ask for; the exit code.
int run_cli(int argc, char** argv);

}  // namespace rb

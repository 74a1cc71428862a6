// What is fed changes line by line now and then, so that it gets past the first reader more often
// than single bytes changed would. (The fuzzer finds LLVMFuzzerCustomMutator by its name.)
#pragma once

#include <string>
#include <vector>

namespace rb::fuzz {

std::vector<std::string> lines_of(const std::string& text);

}  // namespace rb::fuzz

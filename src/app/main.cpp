#include "app/run.hpp"

int main(int argc, char** argv) { return beamfork::run(argc, argv); }

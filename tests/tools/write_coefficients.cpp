// Writes docs/coefficients.md:   write_coefficients FILE
#include <fstream>
#include <iostream>

#include "tests/tools/coefficients_page.h"

int main(int count, char** arguments) {
  if (count != 2) {
    std::cerr << "usage: write_coefficients FILE\n";
    return 2;
  }
  std::ofstream file(arguments[1], std::ios::binary);
  file << offplumb::tools::CoefficientsPage();
  file.close();
  if (!file) {
    std::cerr << "write_coefficients: cannot write " << arguments[1] << "\n";
    return 1;
  }
  return 0;
}

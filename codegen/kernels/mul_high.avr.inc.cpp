// floor(a * b / 65536): the product of two fractions. 19 cycles.
static uint16_t mul_high(uint16_t a, uint16_t b) {
  uint16_t result;
  uint8_t low, zero;
  asm("clr %[zero]\n\t"
      "mul %B[a], %B[b]\n\t"         // high times high: bytes 2 and 3
      "movw %A[result], r0\n\t"
      "mul %A[a], %A[b]\n\t"         // low times low: of it, byte 1 may carry
      "mov %[low], r1\n\t"
      "mul %B[a], %A[b]\n\t"         // the two mixed products: bytes 1 and 2
      "add %[low], r0\n\t"
      "adc %A[result], r1\n\t"
      "adc %B[result], %[zero]\n\t"
      "mul %A[a], %B[b]\n\t"
      "add %[low], r0\n\t"
      "adc %A[result], r1\n\t"
      "adc %B[result], %[zero]\n\t"
      "clr __zero_reg__"
      : [result] "=&r"(result), [low] "=&r"(low), [zero] "=&r"(zero)
      : [a] "r"(a), [b] "r"(b));
  return result;
}

// floor(a * b / 65536): the product of two numbers with 16 fraction bits. Fifteen byte products, of which
// bytes 2 to 5 are kept; the last four lines mend the sign. 96 cycles, a third of what 64 bits would cost.
static int32_t mul_q16(int32_t a, int32_t b) {
  int32_t result;
  uint8_t carry, zero;
  asm("clr %[zero]\n\t"
      "mul %A[a], %A[b]\n\t" "mov %[carry], r1\n\t"
      "mul %B[a], %B[b]\n\t" "movw %A[result], r0\n\t"
      "mul %B[a], %D[b]\n\t" "movw %C[result], r0\n\t"
      "mul %D[a], %B[b]\n\t" "add %C[result], r0\n\t" "adc %D[result], r1\n\t"
      "mul %C[a], %C[b]\n\t" "add %C[result], r0\n\t" "adc %D[result], r1\n\t"
      "mul %C[a], %D[b]\n\t" "add %D[result], r0\n\t"
      "mul %D[a], %C[b]\n\t" "add %D[result], r0\n\t"
      "mul %A[a], %B[b]\n\t" "add %[carry], r0\n\t" "adc %A[result], r1\n\t" "adc %B[result], %[zero]\n\t"
      "adc %C[result], %[zero]\n\t" "adc %D[result], %[zero]\n\t"
      "mul %B[a], %A[b]\n\t" "add %[carry], r0\n\t" "adc %A[result], r1\n\t" "adc %B[result], %[zero]\n\t"
      "adc %C[result], %[zero]\n\t" "adc %D[result], %[zero]\n\t"
      "mul %A[a], %C[b]\n\t" "add %A[result], r0\n\t" "adc %B[result], r1\n\t" "adc %C[result], %[zero]\n\t"
      "adc %D[result], %[zero]\n\t"
      "mul %C[a], %A[b]\n\t" "add %A[result], r0\n\t" "adc %B[result], r1\n\t" "adc %C[result], %[zero]\n\t"
      "adc %D[result], %[zero]\n\t"
      "mul %A[a], %D[b]\n\t" "add %B[result], r0\n\t" "adc %C[result], r1\n\t" "adc %D[result], %[zero]\n\t"
      "mul %D[a], %A[b]\n\t" "add %B[result], r0\n\t" "adc %C[result], r1\n\t" "adc %D[result], %[zero]\n\t"
      "mul %B[a], %C[b]\n\t" "add %B[result], r0\n\t" "adc %C[result], r1\n\t" "adc %D[result], %[zero]\n\t"
      "mul %C[a], %B[b]\n\t" "add %B[result], r0\n\t" "adc %C[result], r1\n\t" "adc %D[result], %[zero]\n\t"
      "clr __zero_reg__\n\t"
      "sbrs %D[a], 7\n\t" "rjmp 1f\n\t" "sub %C[result], %A[b]\n\t" "sbc %D[result], %B[b]\n"
      "1:\n\t"
      "sbrs %D[b], 7\n\t" "rjmp 2f\n\t" "sub %C[result], %A[a]\n\t" "sbc %D[result], %B[a]\n"
      "2:"
      : [result] "=&r"(result), [carry] "=&r"(carry), [zero] "=&r"(zero)
      : [a] "r"(a), [b] "r"(b));
  return result;
}

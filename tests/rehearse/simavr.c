/*
 * A second opinion: runs an ELF file in simavr and prints what the data pin does, for the same reader that
 * listens to avr8js. Built and run by simavr.ts.
 *
 *   simavr FILE CYCLES PORT BIT SHOWN_ADDRESS SHOWN_BYTES
 *
 * One line an edge: the cycle and the new level; before a rise that begins a frame, the bytes of `shown`.
 */
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <simavr/avr_ioport.h>
#include <simavr/sim_avr.h>
#include <simavr/sim_elf.h>

enum { LONG_LOW_CYCLES = 300 * 16 };

static avr_t *avr;
static unsigned shown_address, shown_bytes;
static avr_cycle_count_t fell_at;

static void pin_changed(struct avr_irq_t *irq, uint32_t value, void *unused) {
  (void)irq;
  (void)unused;
  const int high = value & 1;
  if (high && (fell_at == 0 || avr->cycle - fell_at >= LONG_LOW_CYCLES)) {
    printf("shown ");
    for (unsigned i = 0; i < shown_bytes; i++) printf("%02x", avr->data[shown_address + i]);
    printf("\n");
  }
  if (!high) fell_at = avr->cycle;
  printf("%" PRIu64 " %d\n", avr->cycle, high);
}

int main(int argc, char **argv) {
  if (argc != 7) return 2;
  const avr_cycle_count_t cycles = strtoull(argv[2], NULL, 10);
  shown_address = (unsigned)atoi(argv[5]);
  shown_bytes = (unsigned)atoi(argv[6]);

  elf_firmware_t firmware;
  memset(&firmware, 0, sizeof firmware);
  if (elf_read_firmware(argv[1], &firmware) != 0) return 1;
  avr = avr_make_mcu_by_name("atmega328p");
  if (avr == NULL) return 1;
  avr_init(avr);
  avr->frequency = 16000000;
  avr_load_firmware(avr, &firmware);

  avr_irq_t *pin = avr_io_getirq(avr, AVR_IOCTL_IOPORT_GETIRQ(argv[3][0]), atoi(argv[4]));
  avr_irq_register_notify(pin, pin_changed, NULL);

  while (avr->cycle < cycles) {
    const int state = avr_run(avr);
    if (state == cpu_Done || state == cpu_Crashed) return 1;
  }
  return 0;
}

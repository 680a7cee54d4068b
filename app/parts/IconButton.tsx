import type { ButtonHTMLAttributes } from 'react';
import styles from './Button.module.css';
import { Icon, type IconName } from './Icon';

interface IconButtonProps extends Omit<ButtonHTMLAttributes<HTMLButtonElement>, 'className' | 'children'> {
  icon: IconName;
  /** What it does, said by screen readers and shown on hover. */
  label: string;
  /** Give it when the button is a switch. */
  pressed?: boolean;
}

export function IconButton({ icon, label, pressed, type = 'button', ...rest }: IconButtonProps) {
  return (
    <button
      {...rest}
      type={type}
      aria-label={label}
      aria-pressed={pressed}
      title={label}
      className={`${styles.button} ${styles.square}`}
    >
      <Icon name={icon} />
    </button>
  );
}
